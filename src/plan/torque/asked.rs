//! What one fastener asks of a wrench, read once from its own facts: its row in the list is worked out anew for every
//! letter that is typed at a wrench.

use crate::entry::Stage;
use crate::facts::{self, Adapter, Dressing, Facts, Lacks, Mind, Rough, SelfLocking, Told, all3};
use crate::torque::{Figure, OffsetAdapter, Thread, TorqueError, passes};
use crate::units::Unit;
use crate::words::choices;
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length, Torque};

/// What a fastener asks.
#[derive(Debug, Clone, PartialEq)]
pub struct Asked {
    /// What its owner calls it.
    pub name: Option<String>,
    /// What the manual says.
    pub manual: Told<Figure>,
    /// The unit in which it says it.
    pub unit: Option<&'static Unit>,
    /// That is the general table's figure for its thread.
    pub by_table: bool,
    /// What comes on top of it.
    pub drag: Told<Option<Torque>>,
    /// What the wrench has to show: the manual's figure, drag on top where it is without.
    pub figure: Told<Figure>,
    /// What sits on the wrench.
    pub adapter: Told<Fitted>,
    /// The wrench that its owner takes for it.
    pub taken: Option<u32>,
    /// Passes.
    pub stages: Told<Option<Vec<Stage>>>,
    /// How many are tightened together.
    pub bolts: Told<Option<u32>>,
    /// Instead of a torque.
    pub turn: Told<Option<Rough<Angle>>>,
    /// As far as it is one that is known here.
    pub thread: Option<Thread>,
    /// What else it wants, in words.
    pub mind: Vec<&'static str>,
}

/// An adapter as asked, before it is known which wrench it sits on.
#[derive(Debug, Clone, PartialEq)]
pub enum Fitted {
    /// Socket on the drive.
    None,
    /// Square to the wrench; its length changes nothing.
    Square(Option<Length>),
    /// With a lever along the wrench.
    At(Told<Length>, Told<Angle>),
}

impl Asked {
    /// Reads a fastener.
    pub fn of(from: &dyn Facts) -> Self {
        let found = found(from);
        let unit = found.as_ref().ok().and_then(|it| it.unit);
        let manual = found.and_then(manual);
        let drag = drag(from);
        let stages = facts::STAGES.maybe(from);
        // Stages that are not understood may mean less than the whole figure at first: then nothing is set.
        let figure = all3(manual.clone(), drag.clone(), stages.clone()).and_then(
            |(manual, drag, stages)| {
                let figure = drag.map_or(manual, |it| manual.with_drag(it));
                let all = stages.map_or(Ok(Vec::new()), |it| passes(&figure, &it));
                all.map(|_| figure).map_err(|why| facts::STAGES.not_together(why))
            },
        );
        Self {
            name: facts::FASTENER_NAME.known(from),
            by_table: manual.is_ok() && from.entry(facts::TORQUE.id()).is_blank(),
            manual,
            unit,
            drag,
            figure,
            adapter: adapter(from),
            taken: facts::TAKEN_WRENCH.known(from),
            stages,
            bolts: facts::BOLTS.maybe(from),
            turn: facts::TURN.maybe(from),
            thread: facts::THREAD.known(from).and_then(|it| it.thread.ok()),
            mind: mind(from),
        }
    }
}

impl Fitted {
    /// The adapter on a wrench of this length; `None` where it changes nothing: none, or square to the wrench with lengths
    /// unknown.
    pub fn on(&self, wrench: &Told<Option<Length>>) -> Told<Option<OffsetAdapter>> {
        let given = match self {
            Fitted::None | Fitted::Square(None) => return Ok(None),
            Fitted::Square(Some(adapter)) => {
                wrench.clone()?.map(|wrench| (wrench, *adapter, Angle::new::<degree>(90.0)))
            }
            Fitted::At(adapter, angle) => {
                let wrench = wrench.clone().and_then(|it| it.ok_or_else(lacks_wrench));
                Some(all3(wrench, adapter.clone(), angle.clone())?)
            }
        };
        let Some((wrench, adapter, angle)) = given else { return Ok(None) };
        OffsetAdapter::new(wrench, adapter, angle).map(Some).map_err(|why| match why {
            TorqueError::WrenchLength => facts::WRENCH_LENGTH.not_together(why),
            TorqueError::AdapterAngle => facts::ADAPTER_ANGLE.not_together(why),
            _ => facts::ADAPTER_LENGTH.not_together(why),
        })
    }

    /// Its length and its angle from the line of the handle, as far as they are known; `None` without an adapter.
    pub fn shape(&self) -> Option<(Option<Length>, Option<Angle>)> {
        match self {
            Fitted::None => None,
            Fitted::Square(length) => Some((*length, Some(Angle::new::<degree>(90.0)))),
            Fitted::At(length, angle) => Some((length.clone().ok(), angle.clone().ok())),
        }
    }
}

fn lacks_wrench() -> Lacks {
    Lacks::missing(facts::WRENCH_LENGTH.id())
}

/// The fastener's own figure; where the manual has none, that of its general table for the thread.
fn found(from: &dyn Facts) -> Told<Rough<Torque>> {
    match facts::TORQUE.maybe(from)? {
        Some(own) => Ok(own),
        None => from_table(from)?.ok_or_else(|| Lacks::missing(facts::TORQUE.id())),
    }
}

fn manual(Rough { value, bounds, .. }: Rough<Torque>) -> Told<Figure> {
    let figure = match bounds {
        Some([lowest, highest]) => Figure::between(lowest, highest, Some(value)),
        None => Figure::exactly(value),
    };
    figure.map_err(|why| facts::TORQUE.not_together(why))
}

/// What the manual's general table gives for the fastener's thread.
pub fn from_table(from: &dyn Facts) -> Told<Option<Rough<Torque>>> {
    let Some(thread) = facts::THREAD.maybe(from)? else { return Ok(None) };
    let table = facts::GENERAL_TORQUES.maybe(from)?.unwrap_or_default();
    Ok(table.into_iter().find(|it| it.thread.same(&thread)).map(|it| it.torque))
}

/// Prevailing torque is not added unless the manual says that its figure is without drag.
fn drag(from: &dyn Facts) -> Told<Option<Torque>> {
    match facts::SELF_LOCKING.maybe(from)? {
        Some(SelfLocking::DragOnTop) => facts::PREVAILING_TORQUE.of(from).map(Some),
        _ => Ok(None),
    }
}

fn adapter(from: &dyn Facts) -> Told<Fitted> {
    let angle = |it: f64| Ok(Angle::new::<degree>(it));
    let at = |angle| Fitted::At(facts::ADAPTER_LENGTH.of(from), angle);
    Ok(match facts::ADAPTER.of(from)? {
        Adapter::None => Fitted::None,
        Adapter::InLine => at(angle(0.0)),
        Adapter::RightAngle => Fitted::Square(facts::ADAPTER_LENGTH.maybe(from)?),
        Adapter::PointingBack => at(angle(180.0)),
        Adapter::OtherAngle => at(facts::ADAPTER_ANGLE.of(from)),
    })
}

fn mind(from: &dyn Facts) -> Vec<&'static str> {
    let mut all = Vec::new();
    all.extend(facts::THREAD_DRESSING.known(from).map(|it| match it {
        Dressing::Dry => choices::THREAD_DRY,
        Dressing::Oil => choices::THREAD_OILED,
        Dressing::Grease => choices::THREAD_GREASED,
        Dressing::ThreadLock => choices::MIND_THREAD_LOCK,
    }));
    let minds = facts::MIND.known(from).unwrap_or_default();
    all.extend(minds.into_iter().map(|it| match it {
        Mind::ColdOnly => choices::COLD_ONLY,
        Mind::LeftHand => choices::MIND_LEFT_HAND,
        Mind::CotterPin => choices::MIND_COTTER_PIN,
        Mind::NewWasher => choices::NEW_WASHER,
        Mind::NewBolt => choices::NEW_BOLT,
        Mind::LoosenFirst => choices::LOOSEN_FIRST,
    }));
    all
}
