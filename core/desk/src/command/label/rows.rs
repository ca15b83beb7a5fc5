//! What a label states, in rows: a name, a value in words, and of which members of the reading it tells.

use coax::Megahertz;
use label::LabelReading;
use label::seen::Member;
use phrase::{Arg, Phrase};

use crate::command::context::Context;

/// One row.
pub struct Row {
    /// What it tells of.
    pub name: String,
    /// What the label states of that, in words.
    pub value: String,
    /// The members of the reading that it tells of, each in words of its own.
    pub members: Vec<(Member, String)>,
}

/// What the label states, a row each.
pub fn of(context: &Context, reading: &LabelReading) -> Vec<Row> {
    let write = |arg| context.language.write(&arg);
    let mut rows = Vec::new();
    let mut row = |id: &str, member: Member, value: Option<String>| {
        if let Some(value) = value {
            rows.push(Row { name: context.word(id), members: vec![(member, value.clone())], value });
        }
    };
    let kind = |kind: label::PartKind| Phrase::new("desk-label-kind-name").text("kind", kind.name());
    row("desk-label-kind", Member::Kind, reading.kind.map(|of| context.say(&kind(of))));
    row("desk-label-legs", Member::Legs, reading.legs.map(|legs| legs.to_string()));
    let bands = [
        ("desk-label-band", (Member::Low, reading.low), (Member::High, reading.high)),
        ("desk-label-stop-band", (Member::StopLow, reading.stop_low), (Member::StopHigh, reading.stop_high)),
        (
            "desk-label-return-band",
            (Member::ReturnLow, reading.return_low),
            (Member::ReturnHigh, reading.return_high),
        ),
        (
            "desk-label-satellite-band",
            (Member::SatelliteLow, reading.satellite_low),
            (Member::SatelliteHigh, reading.satellite_high),
        ),
    ];
    rows.extend(bands.into_iter().filter_map(|(id, low, high)| band(context, id, low, high)));
    let mut row = |id: &str, member: Member, value: Option<String>| {
        if let Some(value) = value {
            rows.push(Row { name: context.word(id), members: vec![(member, value.clone())], value });
        }
    };
    let losses = (!reading.leg_losses.is_empty()).then(|| {
        let losses = reading.leg_losses.iter().map(|loss| Arg::Loss(loss.value())).collect();
        context.say(&Phrase::new("desk-list").with("items", Arg::Several(losses)))
    });
    row("desk-label-losses", Member::LegLosses, losses);
    let decibels = [
        ("desk-label-tap", Member::Tap, reading.tap),
        ("desk-label-gain", Member::Gain, reading.gain),
        ("desk-label-return-gain", Member::ReturnGain, reading.return_gain),
        ("desk-label-rejection", Member::Rejection, reading.rejection),
        ("desk-label-isolation", Member::Isolation, reading.isolation),
        ("desk-label-return-loss", Member::ReturnLoss, reading.return_loss),
    ];
    for (id, member, figure) in decibels {
        row(id, member, figure.map(|figure| write(Arg::Loss(figure.value()))));
    }
    let flags = [
        ("desk-label-power", Member::PowerPass, reading.power_pass.map(label::PowerPass::passes)),
        ("desk-label-bypass", Member::MocaBypass, reading.moca_bypass),
        ("desk-label-passive-port", Member::ModemPort, reading.modem_port),
        ("desk-label-moca", Member::SaysMoca, reading.says_moca),
        ("desk-label-indoor", Member::IndoorOnly, reading.indoor_only),
    ];
    for (id, member, flag) in flags {
        row(id, member, flag.map(|flag| context.word(if flag { "desk-yes" } else { "desk-no" })));
    }
    row("desk-label-series", Member::Cable, reading.cable.map(|series| series.name().to_owned()));
    rows
}

/// A band, or the one edge of it that is stated.
fn band(
    context: &Context,
    id: &str,
    (low_member, low): (Member, Option<Megahertz>),
    (high_member, high): (Member, Option<Megahertz>),
) -> Option<Row> {
    let edge =
        |id: &str, edge: Megahertz| context.say(&Phrase::new(id).with("edge", Arg::Frequency(edge.value())));
    let from = low.map(|low| edge("desk-from", low));
    let up_to = high.map(|high| edge("desk-up-to", high));
    let whole =
        low.zip(high).map(|(low, high)| context.language.write(&Arg::Band(low.value(), high.value())));
    let value = whole.or_else(|| from.clone()).or_else(|| up_to.clone())?;
    let members = [(low_member, from), (high_member, up_to)];
    let members = members.into_iter().filter_map(|(member, told)| Some((member, told?))).collect();
    Some(Row { name: context.word(id), value, members })
}
