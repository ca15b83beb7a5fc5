pluginManagement {
    val agp = providers.gradleProperty("agp.version").get()
    val kotlin = providers.gradleProperty("kotlin.version").get()
    repositories {
        google()
        mavenCentral()
        gradlePluginPortal()
    }
    plugins {
        id("com.android.application") version agp
        id("org.jetbrains.kotlin.android") version kotlin
    }
}

dependencyResolutionManagement {
    repositories {
        google()
        mavenCentral()
    }
}

rootProject.name = "legwork-phone"
