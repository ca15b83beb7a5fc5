import Door

/// All that is picked once an option was touched. “Not sure” excludes all others.
public func picked(_ choice: ChoiceBlock, touching touched: ChoiceOption) -> [String] {
  guard choice.several else { return [touched.key] }
  if touched.picked {
    return choice.options.filter { $0.picked && $0.key != touched.key }.map(\.key)
  }
  return choice.options
    .filter { $0.key == touched.key || ($0.picked && !$0.unsure && !touched.unsure) }
    .map(\.key)
}
