// Made from look/tokens.toml by `cargo run -p look`.

/// An ink by day and by night, as 0xRRGGBB.
public struct LookInk: Sendable {
    public let light: UInt32
    public let dark: UInt32
}

/// Size, line height and weight of a kind of type, points.
public struct LookType: Sendable {
    public let size: Double
    public let line: Double
    public let weight: Int
}

/// The look as numbers, points.
public enum Look {
    public static let inkAccent = LookInk(light: 0x0B5249, dark: 0x86C9B9)
    public static let inkAccentWash = LookInk(light: 0xDCEAE5, dark: 0x142823)
    public static let inkCaution = LookInk(light: 0x5E3C00, dark: 0xEAC97F)
    public static let inkCautionLine = LookInk(light: 0x946000, dark: 0xC2963F)
    public static let inkCautionWash = LookInk(light: 0xFAF0D6, dark: 0x29230F)
    public static let inkDesk = LookInk(light: 0xE8E8E1, dark: 0x0C0E0D)
    public static let inkEdge = LookInk(light: 0x69736F, dark: 0x868C85)
    public static let inkFill = LookInk(light: 0x0B5249, dark: 0x17564B)
    public static let inkGood = LookInk(light: 0x0B5249, dark: 0x86C9B9)
    public static let inkLine = LookInk(light: 0xCDCFC7, dark: 0x343A36)
    public static let inkMeasured = LookInk(light: 0x2A3C91, dark: 0xBBC6F8)
    public static let inkOnAccent = LookInk(light: 0xFFFFFF, dark: 0x07201B)
    public static let inkOnFill = LookInk(light: 0xFFFFFF, dark: 0xF3EEE1)
    public static let inkPencil = LookInk(light: 0x6A716D, dark: 0x979C95)
    public static let inkQuiet = LookInk(light: 0x3E4947, dark: 0xB4AFA2)
    public static let inkRaised = LookInk(light: 0xFFFFFF, dark: 0x1C211E)
    public static let inkSunk = LookInk(light: 0xEFEFE8, dark: 0x0D0F0E)
    public static let inkSurface = LookInk(light: 0xFAF9F5, dark: 0x131614)
    public static let inkText = LookInk(light: 0x18201E, dark: 0xE2DCCD)
    public static let inkWeak = LookInk(light: 0x8F2518, dark: 0xF2A594)
    public static let inkWeakWash = LookInk(light: 0xF8E6E1, dark: 0x36211C)
    public static let typeAside = LookType(size: 14, line: 20, weight: 400)
    public static let typeFigure = LookType(size: 13, line: 16, weight: 400)
    public static let typeHead = LookType(size: 21, line: 27, weight: 400)
    public static let typeLead = LookType(size: 28, line: 34, weight: 400)
    public static let typeNumber = LookType(size: 40, line: 44, weight: 400)
    public static let typePress = LookType(size: 18, line: 24, weight: 600)
    public static let typeRow = LookType(size: 17, line: 23, weight: 600)
    public static let typeSays = LookType(size: 15, line: 21, weight: 400)
    public static let typeTag = LookType(size: 15, line: 20, weight: 700)
    public static let typeText = LookType(size: 17, line: 25, weight: 400)
    public static let spaceS1: Double = 4
    public static let spaceS2: Double = 8
    public static let spaceS3: Double = 12
    public static let spaceS4: Double = 16
    public static let spaceS5: Double = 24
    public static let spaceS6: Double = 32
    public static let spaceS7: Double = 48
    public static let sizeAnswer: Double = 56
    public static let sizeColumn: Double = 360
    public static let sizeMeasure: Double = 640
    public static let sizeTouch: Double = 48
    public static let sizeWide: Double = 840
    public static let radiusControl: Double = 4
    public static let radiusNone: Double = 0
    public static let radiusTag: Double = 2
    public static let lineBand: Double = 7
    public static let lineCable: Double = 2.25
    public static let lineFine: Double = 1.5
    public static let lineFocus: Double = 3
    public static let lineHair: Double = 1
    public static let lineStout: Double = 4
    public static let secondsPress: Double = 0.08
    public static let secondsTurn: Double = 0.16
}
