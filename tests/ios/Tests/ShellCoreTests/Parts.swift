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

  private func screen(_ blocks: [Block]) -> Screen {
    Screen(
      name: "n", place: "p", way: .on, title: "t", trail: [], howFar: nil, notices: [], blocks: blocks,
      abilities: [], back: true, rightToLeft: false)
  }

  @Test func theWayOnStandsInTheDock() {
    let one = DockPlan(screen([press("m", .main), press("o", .other), press("q", .quiet)]))
    #expect(one.on.map(\.key) == ["m", "o"] && one.out.map(\.key) == ["q"] && one.answers == nil)
    let long = DockPlan(screen([press("m", .main), press("o", .other, "Longer than twenty letters")]))
    #expect(long.on.map(\.key) == ["m"] && long.out.map(\.key) == ["o"])
    let list = DockPlan(screen([press("m", .main), press("o", .other), press("p", .other)]))
    #expect(list.on.map(\.key) == ["m"] && list.out.isEmpty)
    let asks = choice(false, [option("a"), option("b")])
    #expect(DockPlan(screen([.choice(block: asks)])).answers == asks)
    #expect(DockPlan(screen([.choice(block: asks), press("m", .main)])).answers == nil)
    #expect(DockPlan(screen([.choice(block: asks), .choice(block: asks)])).answers == nil)
  }

  @Test func cautionsThatStandTogetherStandInOneBox() {
    let caution = { (id: String) in
      CautionBlock(id: id, aloud: self.silent, name: "Take care", head: "", words: id)
    }
    let blocks: [Block] = [
      .caution(block: caution("1")), .caution(block: caution("2")), press("o", .other), .caution(block: caution("3")),
      press("m", .main),
    ]
    let shown = screen(blocks)
    let pieces = Piece.of(shown, dock: DockPlan(shown))
    #expect(pieces.map(\.id) == ["1", "o", "3"])
    #expect(pieces.first == .cautions([caution("1"), caution("2")]))
  }

  @Test func aStruckLineHasAStrokeEveryTwelve() {
    // As the core draws it for the page: 36 along gives strokes at 6, 18 and 30.
    let pieces = Strokes.pieces([Spot(x: 0, y: 0), Spot(x: 36, y: 0)], .struck)
    #expect(pieces.dropFirst().map { (($0.from.x + $0.to.x) / 2).rounded() } == [6, 18, 30])
    #expect(pieces.dropFirst().allSatisfy { abs($0.from.y - $0.to.y) > 1 })
  }

  @Test func aDoubleLineStandsFourApartAllAlong() {
    // A slope of 3 to 4 is 5 long, so both lines are, and each end stands 2 off (Euclid I.47).
    let way = [Spot(x: 0, y: 0), Spot(x: 3, y: 4)]
    let pieces = Strokes.pieces(way, .double)
    #expect(pieces.count == 2)
    for piece in pieces {
      #expect(abs(hypot(piece.to.x - piece.from.x, piece.to.y - piece.from.y) - 5) < 1e-9)
      #expect(abs(hypot(piece.from.x, piece.from.y) - 2) < 1e-9)
    }
    #expect(Strokes.pieces(way, .dashed).isEmpty)
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
