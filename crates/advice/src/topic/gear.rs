//! The viscosity that gears ask for by the speed of their pitch line.

use tribology::contact::gear::recommended_viscosity;
use tribology::oil::classified;
use tribology::quantity::Velocity;

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "gear",
    title: "Oil of gears",
    about: "The viscosity at 40 °C that enclosed spur, helical and bevel gears ask for by the speed of their pitch line. Worms slide and \
            want more; a box that also oils fast bearings or a clutch is often given less.",
    words: None,
    options: &[Topic::once("pitch-line", "speed of the pitch line of the slowest pair", "5m/s")],
    examples: &["gear --pitch-line 5m/s", "gear --pitch-line 400ft/min"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let v40 = found.take(recommended_viscosity(given.must::<Velocity>("pitch-line", None)?)?);
    let nearest = found.take(classified(v40)?).nearest;
    found.push(Item::quantity("v40_mm2_s", "Viscosity at 40 °C", v40, "mm2/s"));
    found.push(Item::new("iso_vg", "Nearest ISO VG", Value::Whole(i64::from(nearest.number()))));
    found.assume("steady load; a handbook's formula of speed alone, so take a grade either side as good");
    Ok(found)
}
