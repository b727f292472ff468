//! Seasons of the bike on the sheet that are over.

use super::kept::{numbered, save, told};
use super::page::{Page, Saving};
use super::records::{load, write};
use crate::entry::Entry;
use crate::facts;
use crate::garage::{Kept, Season};
use crate::storage::keys;
use crate::words::logbook as words;

fn place_of(key: &str, place: usize) -> String {
    format!("{}{place}", keys::several(keys::PAST, key))
}

/// Seasons of the bike on the sheet that are over, each with its place.
pub fn past_seasons(page: Page) -> Vec<(usize, Season)> {
    let all: Vec<Season> = numbered(page, keys::PAST);
    all.into_iter().enumerate().filter(|it| !it.1.entries.is_empty()).collect()
}

/// Puts a season away; its place. `None` where it could not be kept, which is said. Where nothing is kept at all it is only
/// put off the sheet.
pub fn put_season_away(page: Page, season: &Season) -> Option<usize> {
    let mut place = 0;
    if let Some((key, store)) = page.own_place() {
        let mut record = place_of(&key, place);
        while store.read(&record).is_some() && load::<Season>(page, store, &record) != *season {
            place += 1;
            record = place_of(&key, place);
        }
        let written = write(page, store, &record, season);
        page.book.turn();
        return told(page, written).then_some(place);
    }
    Some(place)
}

/// Puts the ticks of another winter away, with their season but for the park date, which was moved on and is not theirs; whether
/// they are kept there.
pub fn put_ticks_away(page: Page) -> bool {
    let mut season = page.kept().season;
    season.entries.remove(&facts::PARK_DATE.id());
    let away = put_season_away(page, &season).is_some();
    if away {
        page.notices.update(|it| it.push(words::TICKS_PUT_AWAY.to_owned()));
    }
    away
}

/// Lays a season that is over, `back`, on the sheet again. The one there is put away first: nothing is written over another season,
/// whatever has come to stand in that place since.
pub fn bring_season_back(page: Page, place: usize, back: &Season) {
    let now = page.kept();
    let typed = now.season != *back && !now.season.entries.values().all(Entry::is_blank);
    if !typed || put_season_away(page, &now.season).is_some() {
        page.lay_again(Kept { season: back.clone(), ..now });
        // Only once it is kept there it goes here.
        save(page);
        if let (Some((key, store)), Saving::Kept) = (page.own_place(), page.saving.get_untracked())
        {
            let record = place_of(&key, place);
            // What another tab wrote may have come on the sheet with that.
            if page.kept().season == *back && load::<Season>(page, store, &record) == *back {
                store.remove(&record);
            }
        }
    }
    page.book.turn();
}
