// The door from Swift: the first steps of a survey, a deed that the screen does not offer, a file handed on and taken in on
// another phone, the app ended and opened again.

import Door
import Foundation

struct Wrong: Error { let said: String }

func check(_ holds: Bool, _ said: @autoclosure () -> String = "", line: Int = #line) throws {
    if !holds { throw Wrong(said: "line \(line): \(said())") }
}

final class Watcher: DrawAgain {
    let told = DispatchSemaphore(value: 0)
    let fails: Bool

    init(fails: Bool) { self.fails = fails }

    func drawAgain() throws {
        told.signal()
        if fails { throw Wrong(said: "no window") }
    }
}

/// Touches only what stands on the screen, and waits for long work by being told of it.
final class Hand {
    let watcher: Watcher
    let door: Door
    var timesTold = 0
    var screen: Screen

    init(_ home: URL, token: String? = nil, language: String = "en-GB", fails: Bool = false) throws {
        watcher = Watcher(fails: fails)
        let settings = Settings(home: home.path, language: language, firstLength: .metres)
        door = try Door(settings: settings, token: token, watcher: watcher)
        screen = try door.screen()
        screen = try settled(screen)
    }

    func settled(_ first: Screen) throws -> Screen {
        while try door.work() != nil {
            try waitToBeTold()
            _ = try door.screen()
        }
        return try door.screen()
    }

    func waitToBeTold() throws {
        try check(watcher.told.wait(timeout: .now() + 60) == .success, "nobody said that long work is over")
        timesTold += 1
    }

    @discardableResult
    func act(_ deed: Deed) throws -> Screen {
        let shown = try door.act(deed: deed)
        // Whatever was shown as going on has an end that is told, though it may be over before anybody asks.
        let goesOn = shown.blocks.contains { if case .howFar = $0 { true } else { false } }
        if goesOn { try waitToBeTold() }
        screen = try settled(shown)
        return screen
    }

    var keys: [String] {
        screen.blocks.flatMap { block -> [String] in
            switch block {
            case .press(let press): [press.key]
            case .rows(let rows): rows.rows.compactMap(\.key)
            default: []
            }
        }
    }

    func press(_ key: String) throws {
        try check(keys.contains(key), "\(key) on \(screen.name): \(keys)")
        try act(.press(key: key))
    }
}

func walk(_ one: URL, _ two: URL, _ three: URL) throws {
    var hand = try Hand(one)
    try check(hand.screen.name == "surveys")
    try hand.press("new")
    try hand.act(.write(key: "name", words: "Mill House"))
    let before = hand.screen
    try check(hand.act(.press(key: "no such key")) == before, "what is not offered changed something")
    hand = try Hand(one, token: hand.door.token())
    try check(hand.screen.place == before.place, hand.screen.name)
    let texts = hand.screen.blocks.compactMap { block -> String? in
        if case .writing(let writing) = block { writing.text } else { nil }
    }
    try check(texts == ["Mill House"], "\(texts)")
    try hand.press("make")
    try check(hand.screen.name == "ask-whose", hand.screen.name)
    for case .choice(let choice) in hand.screen.blocks.prefix(20) {
        try hand.act(.pick(key: choice.key, picked: [choice.options[0].key]))
        break
    }
    let shown = hand.screen
    hand = try Hand(one, token: hand.door.suspend())
    try check(hand.screen.place == shown.place && hand.screen.blocks == shown.blocks, hand.screen.name)
    if hand.keys.contains("overview") { try hand.press("overview") } else { try hand.act(.back) }
    do {
        _ = try hand.door.smallPhoto(photo: "no such photo")
        throw Wrong(said: "a photo that is not there")
    } catch DoorError.Trouble(let said) {
        try check(!said.isEmpty)
    }
    for _ in 0..<10 where hand.screen.name != "share-pack" {
        let next = ["pack", "more", "overview"].first(where: hand.keys.contains)
        try hand.press(next ?? "no way to it")
    }
    try check(hand.screen.name == "share-pack", hand.screen.name)
    var file = one
    for case .press(let press) in hand.screen.blocks {
        if case .fileToShare(let name, _) = press.need {
            file = one.appendingPathComponent(name)
            try hand.act(.file(key: press.key, file: file.path))
            break
        }
    }
    try check(try Data(contentsOf: file).count > 100)
    let other = try Hand(two, language: "en-US")
    other.screen = try other.settled(other.door.receive(file: file.path))
    try check(other.screen.name == "sent", other.screen.name)
    try other.press("take")
    try check(other.screen.name == "overview", other.screen.name)
    let bar = RowBar(
        scaleEnd: 2500, low: 400, likely: 900, high: 1400, wish: 1000, measured: nil, capped: false, after: nil,
        words: "400 to 1400 Mb/s")
    try check(barDrawn(bar: bar).marks.count > 3)
    let turned = try other.door.settle(settings: Settings(home: two.path, language: "ar-XB", firstLength: .feet))
    try check(turned.rightToLeft)
    // An error of the shell's own code is for it alone, and it is told again all the same.
    let failing = try Hand(three, fails: true)
    failing.screen = try failing.settled(failing.door.receive(file: file.path))
    try failing.press("take")
    try failing.press("forecast")
    try check(failing.screen.name == "forecast", failing.screen.name)
    if failing.keys.contains("overview") { try failing.press("overview") } else { try failing.act(.back) }
    try failing.press("free-burst")
    var slot = ""
    for case .photoSlot(let block) in failing.screen.blocks { slot = block.key }
    // How long anything takes is the machine's: photos so large that nobody takes one in within a touch, until one did not.
    var photos = 0
    while failing.timesTold == 0 && photos < 20 {
        photos += 1
        let photo = three.appendingPathComponent("\(photos).png")
        try Picture.png(UInt8(photos), side: 2400, grain: true).write(to: photo)
        try failing.act(.photo(key: slot, file: photo.path))
    }
    try check(failing.timesTold > 0, "nobody was told of any of \(photos) large photos")
    try failing.act(.back)
    try check(
        failing.screen.name == "overview", "nothing can be done after a shell that could not draw: \(failing.screen.name)")
}

let base = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
let (one, two, three) = (
    base.appendingPathComponent("one"), base.appendingPathComponent("two"), base.appendingPathComponent("three")
)
for home in [one, two, three] {
    try FileManager.default.createDirectory(at: home, withIntermediateDirectories: true)
}
defer { try? FileManager.default.removeItem(at: base) }
try walk(one, two, three)
print("the door from Swift: passed")
