import Foundation
import Hand
import ShellCore
import Testing

/// The parts of the shell, each by itself.
@Suite struct Parts {
  private let home = URL(filePath: "/nowhere")

  @Test(arguments: [
    ("en_US", FirstLength.feet), ("en_GB", .metres), ("de_DE", .metres), ("ar_EG", .metres), ("es_US", .feet),
  ])
  func lengthsGoByTheRegion(locale: String, first: FirstLength) {
    let settings = Settings.ofSystem(home: home, languages: ["de-AT"], locale: Locale(identifier: locale))
    #expect(settings.firstLength == first)
    #expect(settings.language == "de-AT")
    #expect(settings.home == "/nowhere")
  }

  @Test func aLanguageIsATag() {
    // RFC 5646: subtags are parted by hyphens.
    let settings = Settings.ofSystem(home: home, languages: [], locale: Locale(identifier: "pt_BR"))
    #expect(settings.language == "pt-BR")
  }

  private let silent = Aloud(role: .press, label: "", value: "", hint: "")

  private func option(_ key: String, picked: Bool = false, unsure: Bool = false) -> ChoiceOption {
    ChoiceOption(
      id: key, aloud: silent, key: key, words: key, about: "", picked: picked, unsure: unsure, enabled: true)
  }

  private func choice(_ several: Bool, _ options: [ChoiceOption]) -> ChoiceBlock {
    ChoiceBlock(id: "c", aloud: silent, key: "c", name: "c", several: several, options: options)
  }

  @Test func notSureExcludesAllOthers() {
    let options = [option("a", picked: true), option("b"), option("u", unsure: true)]
    #expect(picked(choice(true, options), touching: options[1]) == ["a", "b"])
    #expect(picked(choice(true, options), touching: options[0]) == [])
    #expect(picked(choice(true, options), touching: options[2]) == ["u"])
    #expect(picked(choice(false, options), touching: options[1]) == ["b"])
    let unsure = [option("a"), option("u", picked: true, unsure: true)]
    #expect(picked(choice(true, unsure), touching: unsure[0]) == ["a"])
  }

  private func press(_ key: String, _ weight: PressWeight, _ words: String = "On", need: Need? = nil) -> Block {
    .press(
      block: PressBlock(id: key, aloud: silent, key: key, words: words, weight: weight, need: need, enabled: true))
  }

  private func screen(_ blocks: [Block], _ answers: String? = nil, _ on: [String] = [], _ out: [String] = []) -> Screen
  {
    let dock = DockShown(answers: answers, on: on, out: out, answersLeadOn: on.isEmpty)
    return Screen(
      name: "n", place: "p", way: .on, title: "t", trail: [], howFar: nil, notices: [], blocks: blocks, dock: dock,
      abilities: [], back: true, rightToLeft: false)
  }

  @Test func whatTheCoreSaysStandsInTheDockInThatOrder() {
    let asks = choice(false, [option("a"), option("b")])
    let blocks = [press("o", .other), .choice(block: asks), press("q", .quiet), press("m", .main), press("b", .other)]
    let dock = DockPlan(screen(blocks, "c", ["m", "o"], ["q"]))
    #expect(dock.on.map(\.key) == ["m", "o"] && dock.out.map(\.key) == ["q"] && dock.answers == asks)
    #expect(blocks.map(dock.has) == [true, true, true, true, false])
    let none = DockPlan(screen(blocks))
    #expect(none.on.isEmpty && none.out.isEmpty && none.answers == nil && !blocks.contains(where: none.has))
  }

  @Test func cautionsThatStandTogetherStandInOneBox() {
    let caution = { (id: String) in
      CautionBlock(id: id, aloud: self.silent, name: "Take care", head: "", words: id, unread: false)
    }
    let blocks: [Block] = [
      .caution(block: caution("1")), .caution(block: caution("2")), press("o", .other), .caution(block: caution("3")),
      press("m", .main),
    ]
    let shown = screen(blocks, nil, ["m"])
    let pieces = Piece.of(shown, dock: DockPlan(shown))
    #expect(pieces.map(\.id) == ["1", "o", "3"])
    #expect(pieces.first == .cautions([caution("1"), caution("2")]))
  }

  @Test func ofSeveralLinesAllCanBeTouched() {
    let lines = [(0.0, 0.1), (0.3, 0.4)].map { MarkLine(from: Spot(x: $0.0, y: 0.2), to: Spot(x: $0.1, y: 0.6)) }
    let mark = FigureMark(
      shape: .strokes(lines: lines), weight: .thin, dash: .solid, fill: .absent, ink: .text, key: "k", aloud: silent,
      repeats: false)
    let bounds = mark.bounds
    #expect([bounds.left, bounds.top, bounds.width, bounds.height] == [0, 0.2, 0.4, 0.6 - 0.2])
  }

  @Test func everySignIsALineInItsBox() {
    for sign in Sign.allCases {
      guard case .move = sign.way.first else {
        Issue.record("\(sign) begins nowhere")
        continue
      }
      #expect(sign.way.count > 1)
      let spots = sign.way.flatMap { step -> [Double] in
        switch step {
        case .move(let x, let y), .line(let x, let y): [x, y]
        case .curve(let a, let b, let c, let d, let x, let y): [a, b, c, d, x, y]
        case .close: []
        }
      }
      // A box of 24, as look/signs.toml says.
      #expect(spots.allSatisfy { (0...24).contains($0) }, "\(sign): \(spots)")
    }
    // Only what points along the line of reading turns with it.
    #expect(Sign.allCases.filter(\.turns) == [.back, .on])
  }

  @Test func aTouchPressesWhatLiesUppermost() {
    func frame(_ key: String?, _ x: Double) -> FigureMark {
      FigureMark(
        shape: .frame(corner: Spot(x: x, y: 0), width: 0.2, height: 0.1, round: 0), weight: .absent, dash: .solid,
        fill: .absent, ink: .text, key: key, aloud: silent, repeats: false)
    }
    let marks = [frame("low", 0), frame("high", 0.1), frame(nil, 0)]
    let drawn = FigureDrawn(figure: "f", version: "1", aspect: 1, naturalWidth: 358, marks: marks)
    #expect(drawn.key(at: Spot(x: 0.15, y: 0.05), reach: 0) == "high")
    #expect(drawn.key(at: Spot(x: 0.05, y: 0.05), reach: 0) == "low")
    #expect(drawn.key(at: Spot(x: 0.35, y: 0.05), reach: 0) == nil)
    #expect(drawn.key(at: Spot(x: 0.35, y: 0.05), reach: 0.1) == "high")
  }

  @Test func theWidestLayoutThatFits() {
    let block = FigureBlock(
      id: "f", aloud: silent, figure: "wide", version: "1", name: "n", description: "d", aspect: 1,
      naturalWidth: 1136,
      narrower: [
        FigureLayout(figure: "narrow", version: "1", aspect: 1, naturalWidth: 358),
        FigureLayout(figure: "middle", version: "1", aspect: 1, naturalWidth: 700),
      ], lines: [], keys: [])
    #expect(
      [320, 358, 699, 700, 1135, 1200].map { block.layout(in: $0).figure } == [
        "narrow", "narrow", "narrow", "middle", "middle", "wide",
      ])
  }

  @Test func whatIsOnItsWayIsClearedAwayADayLater() throws {
    let phone = FileManager.default.temporaryDirectory.appending(path: UUID().uuidString)
    defer { try? FileManager.default.removeItem(at: phone) }
    let places = Places(kept: phone.appending(path: "kept"), passing: phone.appending(path: "passing"))
    let photo = try places.photo()
    try Data([1]).write(to: photo)
    places.tidy(now: Date().addingTimeInterval(23 * 3600))
    #expect(FileManager.default.fileExists(atPath: photo.path))
    places.tidy(now: Date().addingTimeInterval(25 * 3600))
    #expect(!FileManager.default.fileExists(atPath: photo.path))
    // A name never leads out of its folder.
    for name in ["../../where", "/etc/passwd", "..", ""] {
      #expect(try places.toGive(name).standardizedFileURL.path.hasPrefix(phone.appending(path: "passing/out/").path))
    }
  }
}
