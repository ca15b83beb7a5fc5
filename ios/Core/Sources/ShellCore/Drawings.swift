import Door
import Foundation

/// The marks of drawings that were fetched, by name and version.
struct Drawings {
  private var known: [String: FigureDrawn] = [:]
  private var bars: [RowBar: FigureDrawn] = [:]

  subscript(name: String, version: String) -> FigureDrawn? {
    get { known[name].flatMap { $0.version == version ? $0 : nil } }
    set { known[name] = newValue }
  }

  subscript(bar: RowBar) -> FigureDrawn? {
    get { bars[bar] }
    set { bars[bar] = newValue }
  }
}

extension Shell {
  /// The marks of a drawing in this layout; `nil` if the screen has it no more.
  public func drawing(_ layout: FigureLayout) -> FigureDrawn? {
    if let known = drawings[layout.figure, layout.version] { return known }
    let drawn = try? door?.figure(figure: layout.figure)
    drawings[layout.figure, layout.version] = drawn ?? nil
    return drawn ?? nil
  }

  /// The bar of a row as marks.
  public func bar(_ bar: RowBar) -> FigureDrawn? {
    if let known = drawings[bar] { return known }
    let drawn = try? barDrawn(bar: bar)
    drawings[bar] = drawn
    return drawn
  }

  /// The file of a small picture of a photo; `nil` if it is gone.
  public func smallPhoto(_ photo: String) -> URL? {
    (try? door?.smallPhoto(photo: photo)).flatMap { $0 }.map { URL(filePath: $0) }
  }

  /// The file of a piece of a photo; `nil` if it is gone.
  public func photoPiece(_ piece: PhotoPiece) -> URL? {
    (try? door?.photoPiece(piece: piece)).flatMap { $0 }.map { URL(filePath: $0) }
  }

  /// The file of a whole photo; `nil` if it is gone.
  public func wholePhoto(_ photo: String) -> URL? {
    (try? door?.wholePhoto(photo: photo)).flatMap { $0 }.map { URL(filePath: $0) }
  }
}

extension FigureBlock {
  /// Every layout of the drawing, the narrowest first.
  public var layouts: [FigureLayout] {
    let widest = FigureLayout(figure: figure, version: version, aspect: aspect, naturalWidth: naturalWidth)
    return narrower + [widest]
  }

  /// The widest layout that fits into this width, points; the narrowest where none does.
  public func layout(in width: Double) -> FigureLayout {
    let all = layouts
    return all.last { $0.naturalWidth <= width } ?? all[0]
  }
}
