//! From the manual's torque to the mark on the wrench.
