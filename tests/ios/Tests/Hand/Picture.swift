import Foundation

/// Pictures for the camera that is not there.
public enum Picture {
  /// A grey picture as PNG (ISO/IEC 15948), its lines stored without compression (RFC 1950, RFC 1951, 3.2.4). With `grain`
  /// every pixel is another one, as in a large photo.
  public static func png(_ number: UInt8, side: Int = 24, grain: Bool = false) -> Data {
    var lines: [UInt8] = []
    var seed = UInt32(number) &* 2_654_435_761 &+ 1
    for row in 0..<side {
      lines.append(0)
      for column in 0..<side {
        seed = seed &* 1_664_525 &+ 1_013_904_223
        lines.append(grain ? UInt8(seed >> 24) : number &+ UInt8(truncatingIfNeeded: row / 4 + column / 8))
      }
    }
    var stream: [UInt8] = [0x78, 0x01]
    var at = 0
    while at < lines.count {
      let piece = lines[at..<min(at + 65_535, lines.count)]
      at += piece.count
      let (low, high) = (UInt8(piece.count & 255), UInt8(piece.count >> 8))
      stream += [at == lines.count ? 1 : 0, low, high, ~low, ~high] + piece
    }
    stream += big(adler(lines))
    var out: [UInt8] = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
    out += chunk("IHDR", big(UInt32(side)) + big(UInt32(side)) + [8, 0, 0, 0, 0])
    out += chunk("IDAT", stream) + chunk("IEND", [])
    return Data(out)
  }

  private static func big(_ number: UInt32) -> [UInt8] {
    (0..<4).map { UInt8(truncatingIfNeeded: number >> (24 - 8 * $0)) }
  }

  private static func chunk(_ name: String, _ data: [UInt8]) -> [UInt8] {
    let body = Array(name.utf8) + data
    return big(UInt32(data.count)) + body + big(crc(body))
  }

  private static let table: [UInt32] = (0..<256).map { number in
    (0..<8).reduce(UInt32(number)) { sum, _ in sum & 1 == 1 ? 0xedb8_8320 ^ (sum >> 1) : sum >> 1 }
  }

  private static func crc(_ bytes: [UInt8]) -> UInt32 {
    ~bytes.reduce(~UInt32(0)) { sum, byte in table[Int((sum ^ UInt32(byte)) & 255)] ^ (sum >> 8) }
  }

  private static func adler(_ bytes: [UInt8]) -> UInt32 {
    var (one, two) = (UInt32(1), UInt32(0))
    for byte in bytes {
      one = (one + UInt32(byte)) % 65_521
      two = (two + one) % 65_521
    }
    return two << 16 | one
  }
}
