//! The map's marks.

use facts::fact::SubjectId;
use house::naming;
use house::record::{PartKind, PortEnd, Rows, Stands};
use phrase::Phrase;

use super::layout::{Places, Space, lay_out};
use super::words::{BoxWords, RunWords, Speaker};
use crate::figure::mark::{Anchor, Dash, Figure, Fill, Ink, Pen, Point, Shape, Weight};
use crate::figure::measure::{fitted, legible, text_width, wrapped};
use crate::figure::sheet::{PLAIN, Sheet, Type, pen};

const BOX_TYPE: Type = Type::of(14.0);
const RUN_TYPE: Type = Type::of(12.0);
const HEAD_TYPE: Type = Type::of(16.0).strong(true);
const BOX_LINE: f64 = 18.0;
const RUN_LINE: f64 = 15.0;
const IN_BOX: f64 = 8.0;
const WIDEST_BOX: f64 = 158.0;
const WIDEST_LABEL: f64 = 104.0;
const WIDEST_END: f64 = 300.0;
const MARGIN: f64 = 12.0;
const LEAST_WIDTH: f64 = 560.0;
const END_LINE: f64 = 22.0;
/// The line of the weakest way.
const WEAK: Pen = pen(Weight::Thick, Dash::Dashed);

/// The words of a row, cut to what there is room for.
enum Cell {
    Part { id: SubjectId, words: BoxWords, run: RunWords },
    Free { text: String, end: Option<PortEnd> },
}

/// The map drawn.
pub(super) fn drawn(rows: &Rows, words: &Speaker<'_>, name: Phrase, description: Phrase) -> Figure {
    let cells: Vec<_> = rows.rows.iter().map(|row| cell(rows, row.feeder, &row.stands, words)).collect();
    let mut spaces: Vec<_> = rows
        .rows
        .iter()
        .zip(&cells)
        .map(|(row, cell)| Space { feeder: row.feeder, depth: row.depth, ..space(cell) })
        .collect();
    let first_loose = rows.rows.iter().position(|row| row.loose);
    if let Some(space) = first_loose.and_then(|row| spaces.get_mut(row)) {
        space.lead = 44.0;
    }
    let places = lay_out(&spaces);
    let mut page = Page { sheet: Sheet::default(), places: &places, words };
    for (row, cell) in cells.iter().enumerate() {
        page.put(rows, row, cell);
    }
    if let Some(top) = first_loose.and_then(|row| places.tops.get(row)) {
        page.sheet.dip(Ink::Text);
        page.sheet.text((MARGIN, MARGIN + top - 16.0), words.say("map-loose-parts"), HEAD_TYPE);
    }
    let width = (places.width + 2.0 * MARGIN).max(LEAST_WIDTH);
    let height = page.put_foot(rows, width, MARGIN + places.height + MARGIN);
    page.sheet.figure((width, height), name, description)
}

fn cell(rows: &Rows, feeder: Option<usize>, stands: &Stands, words: &Speaker<'_>) -> Cell {
    match stands {
        Stands::Part(id) => {
            let BoxWords { heading, lines, name } = words.part(*id);
            let inside = WIDEST_BOX - 2.0 * IN_BOX;
            let lines = lines
                .iter()
                .flat_map(|line| wrapped(&legible(line), BOX_TYPE.size, false, inside, 2))
                .collect();
            let heading = wrapped(&legible(&heading), BOX_TYPE.size, true, inside, 2).join("\n");
            let RunWords { above, below } = words.run_to(*id);
            let run = |lines: Vec<String>| {
                lines.iter().map(|line| fitted(&legible(line), RUN_TYPE.size, false, WIDEST_LABEL)).collect()
            };
            let run = RunWords { above: run(above), below: run(below) };
            Cell::Part { id: *id, words: BoxWords { heading, lines, name: legible(&name).into_owned() }, run }
        }
        Stands::Free { end, .. } => {
            let feeder = feeder.and_then(|row| rows.rows.get(row)).and_then(|row| match row.stands {
                Stands::Part(id) => Some(id),
                Stands::Free { .. } => None,
            });
            let text = words.free(feeder, stands);
            Cell::Free { text: fitted(&text, RUN_TYPE.size, false, WIDEST_END), end: *end }
        }
    }
}

fn widest<'a>(lines: impl Iterator<Item = &'a str>, size: f64, strong: bool) -> f64 {
    lines.map(|line| text_width(line, size, strong)).fold(0.0, f64::max)
}

fn box_height(words: &BoxWords) -> f64 {
    (words.heading.lines().count() + words.lines.len()) as f64 * BOX_LINE + 10.0
}

fn space(cell: &Cell) -> Space {
    match cell {
        Cell::Part { words, run, .. } => {
            let heading = widest(words.heading.lines(), BOX_TYPE.size, true);
            let lines = widest(words.lines.iter().map(String::as_str), BOX_TYPE.size, false);
            let label_lines = run.above.len().max(run.below.len());
            let label = widest(run.above.iter().chain(&run.below).map(String::as_str), RUN_TYPE.size, false);
            Space {
                width: heading.max(lines) + 2.0 * IN_BOX,
                half: (box_height(words) / 2.0).max(label_lines as f64 * RUN_LINE + 6.0),
                label,
                ..Space::default()
            }
        }
        Cell::Free { text, .. } => Space {
            half: RUN_TYPE.size / 2.0 + 2.0,
            spill: 26.0 + text_width(text, RUN_TYPE.size, false),
            ..Space::default()
        },
    }
}

struct Page<'a> {
    sheet: Sheet,
    places: &'a Places,
    words: &'a Speaker<'a>,
}

impl Page<'_> {
    fn middle(&self, row: usize) -> f64 {
        MARGIN + self.places.middles.get(row).copied().unwrap_or(0.0)
    }

    fn column(&self, depth: usize) -> f64 {
        MARGIN + self.places.columns.get(depth).copied().unwrap_or(0.0)
    }

    fn joint(&self, depth: usize) -> f64 {
        MARGIN + self.places.joints.get(depth).copied().unwrap_or(0.0)
    }

    fn put(&mut self, rows: &Rows, row: usize, cell: &Cell) {
        let Some(place) = rows.rows.get(row) else { return };
        let y = self.middle(row);
        let joint =
            place.feeder.map(|feeder| (self.joint(place.depth.saturating_sub(1)), self.middle(feeder)));
        match cell {
            Cell::Part { id, words, run } => {
                let x = self.column(place.depth);
                if let Some(joint) = joint {
                    self.put_run(*id, joint, (x, y), run);
                }
                self.put_box(*id, (x, y), words, place.loose);
                if rows.rows.get(row + 1).is_some_and(|next| next.depth > place.depth) {
                    let Space { width, .. } = space(cell);
                    let pen = self.dipped(self.leaves_by_weak_way(*id));
                    self.sheet.line((x + width, y), (self.joint(place.depth), y), pen);
                }
            }
            Cell::Free { text, end } => {
                if let Some((joint, from)) = joint {
                    self.put_free((joint, from), y, text, *end);
                }
            }
        }
    }

    /// Whether the weakest way goes through the house side of a part.
    fn leaves_by_weak_way(&self, id: SubjectId) -> bool {
        let fed = self.words.survey.wiring.fed_from(id);
        self.words.weak.is_some_and(|weak| fed.iter().any(|child| weak.passes_run_to(*child)))
    }

    /// Takes up the ink of a cable, and gives its line.
    fn dipped(&mut self, weak: bool) -> Pen {
        self.sheet.dip(if weak { Ink::Weak } else { Ink::Cable });
        if weak { WEAK } else { PLAIN }
    }

    fn put_run(&mut self, id: SubjectId, joint: (f64, f64), (x, y): (f64, f64), run: &RunWords) {
        let weak = self.words.weak.is_some_and(|weak| weak.passes_run_to(id));
        let pen = match self.dipped(weak) {
            _ if !weak && self.words.is_thin(id) => pen(Weight::Thin, Dash::Struck),
            line => line,
        };
        let points = [joint, (joint.0, y), (x, y)].map(|(x, y)| Point { x, y }).to_vec();
        self.sheet.draw(Shape::Polyline { points, closed: false }, pen, Fill::None);
        self.sheet.stands_for(id, None);
        let left = joint.0 + 7.0;
        self.sheet.dip(Ink::Quiet);
        for (line, text) in run.above.iter().rev().enumerate() {
            self.sheet.text((left, y - 6.0 - line as f64 * RUN_LINE), text, RUN_TYPE);
        }
        for (line, text) in run.below.iter().enumerate() {
            self.sheet.text((left, y + 15.0 + line as f64 * RUN_LINE), text, RUN_TYPE);
        }
    }

    fn put_box(&mut self, id: SubjectId, (x, y): (f64, f64), words: &BoxWords, loose: bool) {
        let (height, headings) = (box_height(words), words.heading.lines().count());
        let heading = widest(words.heading.lines(), BOX_TYPE.size, true);
        let width =
            heading.max(widest(words.lines.iter().map(String::as_str), BOX_TYPE.size, false)) + 2.0 * IN_BOX;
        let corner = Point { x, y: y - height / 2.0 };
        let kind = self.words.survey.parts.get(&id).map(|part| part.kind);
        let weak = self.words.weak.is_some_and(|weak| weak.passes(id));
        let line = self.dipped(weak);
        let pen = if loose && !weak { pen(Weight::Plain, Dash::Dotted) } else { line };
        let fill = if kind == Some(PartKind::Outlet) { Fill::None } else { Fill::Faint };
        let round = if kind == Some(PartKind::Outlet) { 8.0 } else { 0.0 };
        self.sheet.draw(Shape::Rect { corner, width, height, round }, pen, fill);
        self.sheet.stands_for(id, Some(words.name.clone()));
        self.sheet.dip(Ink::Text);
        let lines = words.heading.lines().chain(words.lines.iter().map(String::as_str));
        for (line, text) in lines.enumerate() {
            let at = (x + IN_BOX, corner.y + 18.0 + line as f64 * BOX_LINE);
            self.sheet.text(at, text, BOX_TYPE.strong(line < headings));
            self.sheet.stands_for(id, None);
        }
    }

    fn put_free(&mut self, joint: (f64, f64), y: f64, text: &str, end: Option<PortEnd>) {
        let tip = joint.0 + 14.0;
        self.sheet.dip(if end == Some(PortEnd::Open) { Ink::Warning } else { Ink::Cable });
        let line = if matches!(end, Some(PortEnd::LooseEnd | PortEnd::AnotherHome)) {
            pen(Weight::Plain, Dash::Dotted)
        } else {
            PLAIN
        };
        let points = [joint, (joint.0, y), (tip, y)].map(|(x, y)| Point { x, y }).to_vec();
        self.sheet.draw(Shape::Polyline { points, closed: false }, line, Fill::None);
        match end {
            Some(PortEnd::Capped) => {
                self.sheet.line((tip, y - 5.0), (tip, y + 5.0), pen(Weight::Thick, Dash::Solid));
            }
            Some(PortEnd::Open) => {
                self.sheet.line((tip, y), (tip + 6.0, y - 5.0), PLAIN);
                self.sheet.line((tip, y), (tip + 6.0, y + 5.0), PLAIN);
            }
            Some(PortEnd::LooseEnd | PortEnd::AnotherHome) | None => {}
        }
        self.sheet.dip(Ink::Quiet);
        self.sheet.text((joint.0 + 24.0, y + 4.0), text, RUN_TYPE.anchored(Anchor::Start));
    }

    /// The loose ends and the key, under everything else. Gives the height of the whole.
    fn put_foot(&mut self, rows: &Rows, width: f64, top: f64) -> f64 {
        let room = width - 2.0 * MARGIN;
        let mut y = top;
        self.sheet.dip(Ink::Text);
        if !rows.loose_ends.is_empty() {
            y += END_LINE;
            self.sheet.text((MARGIN, y), self.words.say("map-loose-ends"), HEAD_TYPE);
            for (id, port) in &rows.loose_ends {
                y += END_LINE;
                let at = naming::port(self.words.survey, *id, *port);
                let text = self.words.language.say(&Phrase::new("map-loose-end").phrase("port", at));
                self.sheet.text((MARGIN, y), fitted(&legible(&text), BOX_TYPE.size, false, room), BOX_TYPE);
                self.sheet.stands_for(*id, None);
            }
            y += END_LINE / 2.0;
        }
        let mut key = vec![self.words.say("map-key")];
        let mut parts = rows.rows.iter().map(|row| &row.stands);
        if parts.any(|stands| matches!(stands, Stands::Part(id) if self.words.is_thin(*id))) {
            key.push(self.words.say("map-key-thin"));
        }
        if self.words.weak.is_some() {
            key.push(self.words.say("map-key-weak"));
        }
        for sentence in key {
            for line in wrapped(&sentence, RUN_TYPE.size, false, room, 8) {
                y += RUN_LINE + 3.0;
                self.sheet.text((MARGIN, y), line, RUN_TYPE);
            }
        }
        y + MARGIN
    }
}
