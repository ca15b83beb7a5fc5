package legwork.phone.logic

/** Marks what is called only behind a check of SDK_INT, for the build's check against the oldest phone. */
@Retention(AnnotationRetention.BINARY)
annotation class NewerSdk
