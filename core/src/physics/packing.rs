//! Cells and controller in the enclosure.
//!
//! The allowances are common practice, no source.

/// Between cells, flank to flank, m: holders or card. Common practice, no source.
pub const BETWEEN_M: f64 = 0.001;
/// For strips and insulation at both ends of a cell together, m. Common practice, no source.
pub const ENDS_M: f64 = 0.003;
/// Insulation at walls, floor and lid, both sides together, m. Common practice, no source.
pub const LINING_M: f64 = 0.004;
/// Room for cables between cells and controller, m. Common practice, no source.
pub const CABLE_M: f64 = 0.020;

law! {
    /// Room of cells flank to flank, m.
    ///
    /// ```
    /// // By hand: 15 of 21 mm and 14 gaps of 1 mm.
    /// use pitchline_core::physics::packing::CellsFlankToFlank;
    /// let room = CellsFlankToFlank { count: 15.0, diameter: 0.021 }.value();
    /// assert!((room - 0.329).abs() < 1e-12);
    /// ```
    CellsFlankToFlank = "Cells side by side", "l_block" = "k d_cell + (k − 1) 1 mm", Metre, PRACTICE;
    count: "k" Count, diameter: "d_cell" Metre => count * diameter + (count - 1.0) * BETWEEN_M
}

law! {
    /// Room of cells end to end, m.
    CellsEndToEnd = "Cells end to end", "l_block" = "k (l_cell + 3 mm)", Metre, PRACTICE;
    count: "k" Count, length: "l_cell" Metre => count * (length + ENDS_M)
}

law! {
    /// Room of cells, cables and controller in a row, m.
    InARow = "Cells, cables and controller", "l_filled" = "l_block + 20 mm + l_controller", Metre, PRACTICE;
    block: "l_block" Metre, controller: "l_controller" Metre => block + CABLE_M + controller
}

law! {
    /// Room of cells and controller side by side, m: the larger of both.
    SideBySide = "Room taken by cells or controller, whichever is larger", "l_filled" = "the greater of l_block and l_controller", Metre, MECHANICS;
    block: "l_block" Metre, controller: "l_controller" Metre => block.max(controller)
}

law! {
    /// Room left over in the enclosure, m.
    RoomLeft = "Room left in the enclosure", "c" = "l_inside − l_filled − 4 mm", Metre, PRACTICE;
    inside: "l_inside" Metre, filled: "l_filled" Metre => inside - filled - LINING_M
}
