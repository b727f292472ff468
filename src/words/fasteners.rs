//! Usual names of fasteners. In a link they travel as their code, which is frozen for ever.

const NAMES: &[(u8, &str)] = &[
    (1, "Axle nut"),
    (2, "Axle pinch bolt"),
    (3, "Drain plug"),
    (4, "Oil filter"),
    (5, "Spark plug"),
    (6, "Header nut"),
    (7, "Caliper bolt"),
    (8, "Brake disc bolt"),
    (9, "Sprocket nut"),
    (10, "Countershaft nut"),
    (11, "Triple clamp bolt"),
    (12, "Fork drain bolt"),
    (13, "Steering stem nut"),
    (14, "Swingarm pivot nut"),
    (15, "Shock bolt"),
    (16, "Handlebar clamp bolt"),
    (17, "Engine mount bolt"),
    (18, "Footpeg bolt"),
    (19, "Cylinder head nut"),
    (20, "Valve cover bolt"),
    (21, "Clutch cover bolt"),
    (22, "Banjo bolt"),
    (23, "Rear axle nut"),
    (24, "Front axle nut"),
];

/// The code of a usual name.
pub fn code(name: &str) -> Option<u8> {
    NAMES.iter().find(|(_, it)| *it == name).map(|(code, _)| *code)
}

/// The name of a code.
pub fn name(code: u8) -> Option<&'static str> {
    NAMES.iter().find(|(it, _)| *it == code).map(|(_, name)| *name)
}

/// All of them, to offer while a name is typed.
pub fn all() -> impl Iterator<Item = &'static str> {
    NAMES.iter().map(|(_, name)| *name)
}

/// A wrench without a name.
pub fn wrench(number: usize) -> String {
    if number == 1 { "Wrench".to_owned() } else { format!("Wrench {number}") }
}
