//! What was measured, by name: many values of each, of which the one in the middle and the one that few are above are told.

use std::collections::HashMap;

use crate::Outcome;

/// All that was measured.
pub struct Figures(HashMap<String, Vec<f64>>);

impl Figures {
    /// Reads lines of a name, a tab, and numbers with a space between them.
    pub fn read(text: &str) -> Self {
        let line = |line: &str| {
            let (name, values) = line.split_once('\t')?;
            let values: Option<Vec<f64>> = values.split(' ').map(|it| it.parse().ok()).collect();
            let mut values = values.filter(|it| it.iter().all(|it| it.is_finite()))?;
            values.sort_by(f64::total_cmp);
            Some((name.to_owned(), values))
        };
        Self(text.lines().filter_map(line).collect())
    }

    /// The value in the middle; of an even count the lower one of two.
    pub fn median(&self, name: &str) -> Outcome<f64> {
        self.at(name, 0.5)
    }

    /// The value that 95 of 100 are not above.
    pub fn p95(&self, name: &str) -> Outcome<f64> {
        self.at(name, 0.95)
    }

    /// The largest.
    pub fn most(&self, name: &str) -> Outcome<f64> {
        self.at(name, 1.0)
    }

    /// How many values there are.
    pub fn count(&self, name: &str) -> usize {
        self.0.get(name).map_or(0, Vec::len)
    }

    fn at(&self, name: &str, share: f64) -> Outcome<f64> {
        let values = self.0.get(name).map_or(&[][..], Vec::as_slice);
        let place = (values.len() as f64 * share).ceil() as usize;
        values
            .get(place.saturating_sub(1))
            .copied()
            .ok_or_else(|| format!("`{name}` was not measured; what is printed above may say why."))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_middle_and_the_rare_are_told() {
        let all: Vec<String> = (1..=100).rev().map(|it| it.to_string()).collect();
        let text = format!("hundred\t{}\none\t7.5\nnone\tx\nodd\t3 1 2\nno tab", all.join(" "));
        let figures = Figures::read(&text);
        assert_eq!(figures.median("hundred"), Ok(50.0));
        assert_eq!(figures.p95("hundred"), Ok(95.0));
        assert_eq!(figures.most("hundred"), Ok(100.0));
        assert_eq!(figures.median("odd"), Ok(2.0));
        assert_eq!(figures.p95("one"), Ok(7.5));
        assert_eq!(figures.count("hundred"), 100);
        assert!(figures.median("none").is_err());
        assert!(figures.median("no tab").is_err());
    }
}
