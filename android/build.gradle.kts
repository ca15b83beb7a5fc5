// Makes the APK, for whoever has the Android SDK. The same sources, resources, manifest and versions as pom.xml, by which
// everything is run without the SDK; InStepTest compares the two.
plugins {
    id("com.android.application")
    id("org.jetbrains.kotlin.android")
}

fun held(name: String): String = providers.gradleProperty(name).get()

android {
    namespace = "legwork.phone"
    compileSdk = held("target.sdk").toInt()

    defaultConfig {
        applicationId = "legwork.phone"
        minSdk = held("min.sdk").toInt()
        targetSdk = held("target.sdk").toInt()
        versionCode = 1
        versionName = "0.1.0"
        ndk { abiFilters += listOf("arm64-v8a", "armeabi-v7a", "x86_64") }
    }

    sourceSets["main"].apply {
        manifest.srcFile("src/main/AndroidManifest.xml")
        kotlin.srcDirs("src/main/kotlin", "core/src/main/kotlin")
        res.srcDirs("../look/android", "src/main/res")
        // tools/abis.sh puts the core here, a folder an ABI.
        jniLibs.srcDirs("target/jniLibs")
        // tools/model.sh puts the model that reads print here.
        assets.srcDirs("target/assets")
    }

    signingConfigs {
        // The key is the builder's own, and stands in no file of the project.
        create("release") {
            val store = System.getenv("LEGWORK_KEYSTORE")
            if (store != null) {
                storeFile = file(store)
                storePassword = System.getenv("LEGWORK_KEYSTORE_PASSWORD")
                keyAlias = System.getenv("LEGWORK_KEY")
                keyPassword = System.getenv("LEGWORK_KEY_PASSWORD")
            }
        }
    }

    buildTypes {
        release {
            // JNA and the bindings find classes by their names.
            isMinifyEnabled = false
            signingConfig = signingConfigs["release"].takeIf { it.storeFile != null }
        }
    }

    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }
    kotlinOptions { jvmTarget = "17" }
    lint { checkDependencies = false }
}

// Made where it is not there. Where it cannot be made, nothing is built; LEGWORK_WITHOUT_MODEL=1 builds without it.
val model = tasks.register<Exec>("model") { commandLine("sh", "tools/model.sh") }
tasks.named("preBuild") { dependsOn(model) }

dependencies {
    implementation("net.java.dev.jna:jna:${held("jna.version")}@aar")
}
