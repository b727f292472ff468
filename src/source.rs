//! Every source that a working names, in one place, so that the lot can be checked: a document with its section, a law of
//! nature or arithmetic that needs none, or "common practice, no source" where nobody has written it down.

macro_rules! sources {
    ($($name:ident: $text:literal;)*) => { $(#[doc = $text] pub const $name: &str = $text;)* };
}

// All subjects.
sources! {
    ARITHMETIC: "arithmetic";
    CALENDAR: "calendar (proleptic Gregorian)";
    PRACTICE: "common practice, no source";
}

// Torque.
sources! {
    MOMENTS: "statics: moments of the pull about the square drive and about the fastener";
    LEVER: "statics: moments of the pull about the square drive and about the fastener; US Army TM 9-254 fig. 4-6 gives the cosine form";
    ONE_AXIS: "statics: wrench and fastener turn about one axis, or the adapter has no lever along the pull";
    NEAREST_MARK: "arithmetic: the mark nearest to the exact setting";
    BEST_MARK: "arithmetic: of all marks the one with most of what the fastener may get inside the manual’s range, then the nearest to the aim";
    PREVAILING: "arithmetic: the nut’s drag takes its part of what the wrench shows";
    PRINTED_TURN: "arithmetic on the turn that the part’s maker prints";
    ROUNDING: "arithmetic: what the fastener gets at the mark, against what is to be reached";
    ISO_6789: "ISO 6789:2003, click wrench with a scale (type II, class A): 4 %, or 6 % where the highest mark is 10 N·m or less; the wrench’s own paper comes first";
    PROOF_STRESS: "proof stress and yield: EN ISO 898-1:2013 Table 3; stainless has no proof stress, its Rp0.2 of ISO 3506-1 stands for it; stress area: ISO 898-1";
    FRICTION_FORM: "a wedge round the bolt with flanks of 60° and a ring under the head, as a lubricant maker’s bolt guide prints it and VDI 2230 uses it; thread: ISO 724; head: ISO 4014, hole: ISO 273 medium";
    YIELD_USED: "VDI 2230, 90 % of yield in tension and twist together; form from memory, confirmed by its tables as fastener distributors print them";
    ESTIMATE: "T as VDI 2230; μ: least of its friction class (VDI 2230 Table A5); s: at most 90 % of proof load, and no more than 90 % of yield in tension and twist together (VDI 2230); lower end 5/6 of it: 75 % is Shigley’s for joints opened again, 90 % for permanent ones (as quoted, the book not seen)";
    SCATTER: "VDI 2230:1986 as a fastener supplier reprints it: torque wrench, friction estimated, ±23 to ±28 %";
    BOLT_CIRCLE: "US Army TM 5-3805-298-23-2 WP 0176: no order given, then the circular pattern; TB 9-3950-253-13&P WP 0061: its figure, by opposite pairs; a gasket maker’s bolting page: opposite pairs, halving the angle between them; odd counts, the star: common practice, no source";
}

// Oil.
sources! {
    MANUAL_FILL: "the bike’s manual, its fill for this oil change";
    FILTER_ALLOWANCE: "by definition: the fill with a new filter less the fill without";
    MARKS: "arithmetic: the whole fill reaches the upper mark, the volume between the marks less the lower";
    BOTTLES: "arithmetic over all combinations: half a milliliter short, all in all, needs no further bottle; a bottle of 946 mL is a US quart";
    LEVEL: "arithmetic: the volume between the marks, spread evenly between them (common practice, no source)";
    OIL_USE: "by definition: what went in less what came out, over the distance ridden";
    USED_OIL: "by definition: the manual’s fill replaces what came out";
    OIL_EXPANSION: "API MPMS 11.1 (1980), ASTM D1250 table 54D: K, H = exp(−d · (1 + 0.8 · d)), d = 0.6278 / ρ · (t − 15 °C); 860 kg/m³ (840 to 900) where no data sheet is at hand: common practice, no source";
    SAE_J300: "SAE J300, January 2015: cranking limit 35 K below the number before the W, pumping limit 5 K lower";
}

// Fuel.
sources! {
    STABILIZER_RATIO: "arithmetic on the ratio that the stabilizer’s label prints";
    DISPLACEMENT: "the new fuel pushes the old out of the line";
    DILUTION_TO_FIVE_PERCENT: "dilution of a well-mixed volume; 5 % left is common practice, no source";
    RIDE_AT_LEAST: "arithmetic; 15 to 20 km at least is common practice, no source";
    FUEL_LEFT: "arithmetic; a consumption that was typed as one number is taken for 15 % off: common practice, no source";
    GASOLINE_EXPANSION: "API MPMS 11.1 (1980), ASTM D1250 table 54B: K, H = exp(−g · (1 + 0.8 · g)), g = (346.4228 / ρ + 0.4388) / ρ · (t − 15 °C); ρ between 720 and 770 kg/m³ at 15 °C (EN 228 from memory)";
    FUEL_KEEPS: "calendar; treated fuel keeps 12 to 24 months (label claims), untreated 1 to 3 in a tank: common practice, no source";
    HUMID_AIR: "gas law and vapor pressure over water, WMO-No. 8: 611.2 Pa · exp(17.62 · t / (243.12 + t)); over ice 22.46 and 272.62, from memory";
    WATER_IN_E10: "pages quoting published guidance: 0.3 % of the volume at −12 °C, 0.5 % at 16 °C";
    WATER_IN_E0: "NACA RM E52D24: log X (mol %) = −(4200 · 0.155 + 1050) · (1 / T − 0.0016) + 2; a refiner’s 150 ppm at 21 °C agrees; hydrogen to carbon 0.155 from memory";
}

// Battery.
sources! {
    SELF_DISCHARGE: "loss in proportion to what is left: US Army TM 9-6140-200-14, para 4-8c (a full battery loses faster); r and Q: ranges of published points, see battery::parameters; capacity 70–100 % of the label and draw ±50 %: common practice, no source";
    RESTING_VOLTAGES: "V(s): table of resting voltages at 26.7 °C, open dataset ElectricalAge2 and makers’ charging tables; LiFePO4: open-circuit potentials of an open cell set (FaradayInstitution/BPX). ΔV(T): the same dataset; its −0.134 V at −17.8 °C is set against about −0.05 V by theory";
    MANUAL_VOLTAGE: "the manual’s voltage, by the table of resting voltages at 26.7 °C";
    OWNER: "the owner, from the bike’s or the battery’s manual";
    LEAD_ACID_THRESHOLD: "US Army TM 5-3820-256-24-4, battery section: charge a stored battery that falls to SG 1.225, which is 75 %";
    LITHIUM_THRESHOLD: "lower end of the 40 to 60 % that two sellers advise for storage (weak)";
    METER_CHECK: "common practice, no source: three to four weeks after parking";
    FREEZING: "Tf(SG): US Army OD1002 lesson 2, TM 5-4210-230-14&P-1 table 2, TM 10-6140-200-14 table 1-1, which agree within 5 °F; SG in proportion to the charge: DOE-HDBK-1084-95 p. 17; flat counts as SG 1.050 (assumed)";
    LEAD_ACID_CHARGING: "the last fifth cannot be charged fast (charging pages); 0.95 from memory of Stevens and Corey, Sandia; 0.80 and C/20 h, mean of a taper from C/10 h to C/100 h, are assumed. From flat at C/10 it gives 13.4 h; pages say 12–16 h";
    LITHIUM_CHARGING: "0.99: a battery education page; the slower last twentieth is assumed";
    COLDEST_NIGHT: "climate normals of the station (NOAA NCEI or Environment Canada, see season::places); 15 to 20 K under the mean night of the coldest month: common practice, no source";
    MAINTAINED: "US Army PS Magazine, TB 43-PS-665, April 2008, p. 14: a charged battery is 95 to 100 % full; that a maintainer keeps it so: common practice, no source";
    SPREAD: "arithmetic on the forecast; that even spreading is best: common practice, no source";
    HYDROMETER: "golf-vehicle and car makers’ hydrometer tables, US Army TM 5-4210-230-14&P-1, battery section: 0.004 for each 10 °F from 80 °F; Encyclopedia Americana, Electric Storage Battery: 0.003";
    GRAVITY_SCALES: "1.265: US Army TM 5-4210-230-14&P-1, battery section, table 2, in proportion by DOE-HDBK-1084-95 p. 17; 1.280: manual filed as TM 5-1185, tables II-III, and TM 10-6140-200-14, table 1-1";
    CHARGE_VOLTAGE: "flooded 14.8 V: deep-cycle battery data sheet, 14.4 V: common practice, no source; AGM, gel 14.1 to 14.4 V: 12 V product sheets; n: battery education pages, 3 mV, an encyclopedia’s article, 5 mV";
    FLOAT_VOLTAGE: "flooded 13.2 V: deep-cycle battery data sheet; AGM, gel 13.5 to 13.8 V: 12 V product sheets; n: as for charging";
    LITHIUM_VOLTAGE: "14.6 V: a cell maker’s page, 3.65 V a cell; 14.2 V: a LiFePO4 battery’s installation manual, section 6.4";
    COLD_CRANKING: "US Army TM 5-4210-230-14&P-1, truck service manual, battery section, table 3; straight lines between";
    IMPLIED_DRAW: "the law of the charge from day to day, solved for the draw; resting voltages as for the charge; ±0.01 V: common practice, no source";
}

// Coolant, tires, brake and other fluids.
sources! {
    COOLANT_FREEZING: "ASHRAE’s inhibited glycols by volume, as CoolProp 8.0.0 computes them (AEG, APG) each 5 % from 10 % on; Lange’s Handbook Table 5.13 agrees within 1.3 K";
    MIXING: "dilution of a well-mixed volume";
    CONSTANT_VOLUME: "gas law at constant volume, absolute pressures and kelvins; a chemical engineer’s worked example agrees";
    ATMOSPHERE: "ICAO standard atmosphere; PsychroLib 2.5.0 computes the same";
    SIDEWALL: "the tire’s sidewall; storage up to it: common practice, no source";
    DATE_CODE: "week and year: 49 CFR 574.5, 64 FR 36807; week 01 is the first full one, from two vehicle manuals; weeks from Sunday on: from memory, so ±1 week";
    RUNNING_IN: "common practice, no source: 80 to 160 km, as tire sellers say";
    BRAKE_FLUID: "FMVSS 116 (49 CFR 571.116) S5.1, limits as three pages quote them";
    TWO_YEARS: "common practice, no source: every two years";
    MANUAL: "the bike’s manual";
}
