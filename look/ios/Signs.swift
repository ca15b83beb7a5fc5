// Made from look/signs.toml by `cargo run -p look`.

/// A step of a sign's line, in a box of 24.
public enum SignStep: Equatable, Sendable {
    case move(Double, Double)
    case line(Double, Double)
    case curve(Double, Double, Double, Double, Double, Double)
    case close
}

/// A small drawn sign. It only repeats what a word beside it says.
public enum Sign: String, CaseIterable, Sendable {
    case back
    case box
    case boxTicked
    case camera
    case care
    case cross
    case doubt
    case file
    case flag
    case fold
    case light
    case lightOn
    case on
    case pen
    case pictures
    case tick
    case unfold

    /// Whether it points along the line of reading, and turns with it.
    public var turns: Bool { [.back, .on].contains(self) }

    /// Its line, step by step.
    public var way: [SignStep] {
        switch self {
        case .back: [.move(15, 4), .line(7, 12), .line(15, 20)]
        case .box: [.move(3.5, 3.5), .line(20.5, 3.5), .line(20.5, 20.5), .line(3.5, 20.5), .close]
        case .boxTicked: [.move(3.5, 3.5), .line(20.5, 3.5), .line(20.5, 20.5), .line(3.5, 20.5), .close, .move(7.5, 12), .line(10.7, 15.5), .line(16.7, 8)]
        case .camera: [.move(2.5, 7), .line(21.5, 7), .line(21.5, 20), .line(2.5, 20), .close, .move(8, 13.5), .curve(8, 15.71, 9.79, 17.5, 12, 17.5), .curve(14.21, 17.5, 16, 15.71, 16, 13.5), .curve(16, 11.29, 14.21, 9.5, 12, 9.5), .curve(9.79, 9.5, 8, 11.29, 8, 13.5), .close, .move(8, 7), .line(9.5, 4), .line(14.5, 4), .line(16, 7)]
        case .care: [.move(12, 2.8), .line(22, 20.5), .line(2, 20.5), .close, .move(12, 9), .line(12, 15), .move(12, 17.2), .line(12, 18.2)]
        case .cross: [.move(5, 5), .line(19, 19), .move(19, 5), .line(5, 19)]
        case .doubt: [.move(8.3, 9), .curve(8.28, 7.14, 9.61, 5.53, 11.45, 5.21), .curve(13.28, 4.89, 15.08, 5.95, 15.69, 7.71), .curve(16.3, 9.47, 15.54, 11.42, 13.9, 12.3), .curve(12.6, 13.1, 12, 13.8, 12, 15.3), .move(12, 18.4), .line(12, 19.6)]
        case .file: [.move(6, 2.5), .line(14, 2.5), .line(18.5, 7), .line(18.5, 21.5), .line(6, 21.5), .close, .move(14, 2.5), .line(14, 7), .line(18.5, 7), .move(12, 10), .line(12, 17), .move(9, 14), .line(12, 17), .line(15, 14)]
        case .flag: [.move(6, 3), .line(6, 21), .move(6, 3), .line(18, 7.5), .line(6, 12)]
        case .fold: [.move(5, 9), .line(12, 16), .line(19, 9)]
        case .light: [.move(8, 2.5), .line(16, 2.5), .line(16, 5.5), .line(14, 9.5), .line(14, 21.5), .line(10, 21.5), .line(10, 9.5), .line(8, 5.5), .close, .move(12, 12), .line(12, 14.5), .move(8, 5.5), .line(16, 5.5)]
        case .lightOn: [.move(8, 9.5), .line(16, 9.5), .line(16, 11.5), .line(14, 14.5), .line(14, 21.5), .line(10, 21.5), .line(10, 14.5), .line(8, 11.5), .close, .move(12, 2), .line(12, 6), .move(4.5, 4.5), .line(7.5, 7.5), .move(19.5, 4.5), .line(16.5, 7.5), .move(12, 16), .line(12, 18)]
        case .on: [.move(9, 5), .line(16, 12), .line(9, 19)]
        case .pen: [.move(4, 20), .line(5, 16), .line(16, 5), .line(19, 8), .line(8, 19), .close]
        case .pictures: [.move(2.5, 5), .line(17.5, 5), .line(17.5, 20), .line(2.5, 20), .close, .move(6, 5), .line(6, 2.5), .line(21.5, 2.5), .line(21.5, 17.5), .line(17.5, 17.5), .move(2.5, 16), .line(7.5, 11), .line(11.5, 15), .line(13.5, 13), .line(17.5, 17)]
        case .tick: [.move(4, 12.5), .line(9.5, 18), .line(20, 6)]
        case .unfold: [.move(5, 16), .line(12, 9), .line(19, 16)]
        }
    }
}
