// An hour of stop and go in plain JavaScript, to be timed beside the core: the equations of
// tests/fit/ride.py, not a port of the Rust. Runge and Kutta's fourth order in steps of 0.1 s while
// speed changes and 1 s while it does not; the open-circuit voltage is straight between 401 points.

/** The ride on a board; both texts are the fixtures' own. */
function hourOfStopAndGo(boardCsv, cellCsv) {
  const rows = (text, skip) => text.split('\n').filter((l) => l && !l.startsWith('#')).slice(skip);
  const board = new Map(rows(boardCsv, 1).map((row) => {
    const [slot, key, value] = row.split(',');
    return [`${slot}.${key}`, Number(value)];
  }));
  const given = (name) => board.get(name);
  const volts = rows(cellCsv, 1).map((row) => Number(row.split(',')[1]));

  // The course.
  const LEG = 400, GRADE = 0.02, CRUISE = 5, RATE = 3, REST = 12, END = 3600, START = 0.97;
  // The energy class of cells, and the assumptions of the model about heat and braking.
  const S0 = 0.745803, S1 = 0.249624, S2 = 1.0077, TAU1 = 12.0296, TAU2 = 587.513, LAG = 0.177405;
  const ACTIVATION = 23900, GAS = 8.314462618;
  const COPPER_SHARE = 0.2, COPPER_C = 385, STEEL_C = 480, COOLING = 0.12;
  const PACK_C = 1000, PACK_G = 0.18, CONTROLLER_C = 800;
  const FADE_LOW = 1.5 / 3.6, FADE_HIGH = 5 / 3.6, OVER_VOLTAGE = 1.012;

  const G = 9.80665;
  const n = given('truck.motor_count');
  const series = given('pack.series'), parallel = given('pack.parallel');
  const ratio = given('wheel_pulley.teeth') / given('motor_pulley.teeth');
  const radius = (given('wheel.diameter_mm') / 2 - given('wheel.deflection_mm')) / 1000;
  const eta = given('belt.efficiency_percent') / 100;
  const kg = (...parts) => parts.reduce((sum, part) => sum + given(`${part}.mass_kg`), 0);
  const mass = kg('pack', 'controller', 'deck', 'truck') + 4 * given('wheel.mass_kg')
    + n * kg('motor', 'motor_pulley', 'wheel_pulley', 'belt')
    + given('rider.mass_kg') + given('rider.gear_mass_kg');
  const motorKg = given('motor.mass_kg');
  const rotor = 0.45 * motorKg * (0.03 * Math.cbrt(motorKg / 0.75)) ** 2;
  const felt = mass + 2 * given('wheel.mass_kg') + n * rotor * (ratio / radius) ** 2;

  const celsius = given('place.air_c');
  const pressure = 101325
    * (1 - 0.0065 * given('place.altitude_m') / 288.15) ** (G / (0.0065 * 287.05287));
  const density = pressure / (287.05287 * (celsius + 273.15));
  const wind = given('place.headwind_km_h') / 3.6;
  const drag = 0.5 * density * given('rider.drag_area_m2');
  const crr = given('wheel.rolling_smooth') * (1 + given('wheel.roughness_percent') / 100);

  const ktDirect = 60 / (2 * Math.PI * given('motor.kv_rpm_per_v'));
  const kt = Math.sqrt(3) / 2 * ktDirect;
  const r20 = given('motor.resistance_ll_mohm') / 1000;
  const switchOhm = 1.5 * given('controller.switch_mohm') / 1000;
  const switching = given('controller.switching_percent') / 100;
  const idle = given('controller.idle_w');
  const share = given('motor.hysteresis_percent') / 100;
  const omega0 = given('motor.no_load_rpm') * Math.PI / 30;
  const iron0 = ktDirect * given('motor.no_load_a');
  const motorA = Math.min(given('controller.motor_current_a'), given('motor.max_current_a'));

  const wireMm = 0.127 * 92 ** ((36 - given('pack.wire_awg')) / 39);
  const lead = given('pack.joints_mohm') / 1000
    + given('pack.wire_m') / (58 * Math.PI / 4 * wireMm ** 2) * (1 + 0.00393 * (celsius - 20));
  const cellOhm = given('cell.resistance_10s_mohm') / 1000;
  const capacity = 3600 * given('cell.capacity_ah');

  const beltPull = given('belt.rating_n_per_mm') * given('belt.width_mm');
  const pitchRadius = given('motor_pulley.teeth') * given('belt.pitch_mm') / 2000 / Math.PI;
  const grip = given('place.grip_percent') / 100 * n / 2;
  const gripHeld = grip * mass * G
    / (2 + 2 * grip * given('rider.centre_height_mm') / given('deck.wheelbase_mm'));
  const brakeA = Math.min(given('controller.brake_current_a'), given('motor.max_current_a'));
  const fullV = Math.min(series * given('cell.full_v') * OVER_VOLTAGE, given('controller.max_bus_v'));
  const packKg = given('pack.mass_kg'), controllerKg = given('controller.mass_kg');
  const innerK = given('motor.winding_k_per_w'), outerK = given('motor.case_k_per_w');
  const sinkK = given('controller.heat_sink_k_per_w');

  const iron = (omega) => iron0 * (share + (1 - share) * omega / omega0);
  const ocv = (z) => {
    const place = Math.min(Math.max(z, 0), 1) * (volts.length - 1);
    const whole = Math.min(Math.floor(place), volts.length - 2);
    return volts[whole] + (place - whole) * (volts[whole + 1] - volts[whole]);
  };

  function brakeMost(v, omega, lost, heat, openV, ohm) {
    let most = Math.min(brakeA, (beltPull * pitchRadius - lost) / kt,
      (gripHeld * radius * eta / (ratio * n) - lost) / kt);
    const back = Math.max(0, Math.min(n * given('controller.regen_current_a'), (fullV - openV) / ohm));
    const v0 = openV + back * ohm;
    // heat I² - b I + c = 0: where the pack takes no more.
    const b = kt * omega - switching * v0, c = idle + back * v0 / n, inside = b * b - 4 * heat * c;
    if (b > 0 && inside > 0) most = Math.min(most, (b - Math.sqrt(inside)) / (2 * heat));
    return most * Math.min(1, Math.max(0, (v - FADE_LOW) / (FADE_HIGH - FADE_LOW)));
  }

  // Derivatives of way, speed, charge, two filters, and four temperatures; no rate means rest.
  function motion([, speed, z, j1, j2, cellC, windingC, caseC, switchC], rate, grade) {
    const rest = rate === null, v = rest ? 0 : speed, omega = ratio * v / radius;
    const lost = v > 0 ? iron(omega) : 0;
    let asked = 0, acceleration = 0, current = 0;
    const heat = 0.75 * r20 * (1 + 0.00393 * (windingC - 20)) + switchOhm;
    const factor = Math.exp(ACTIVATION / GAS * (1 / (cellC + 273.15) - 1 / 298.15));
    const openV = series
      * (ocv(z - cellOhm * factor ** 2 * LAG * j1) - cellOhm * factor * (S1 * j1 + S2 * j2));
    const ohm = series / parallel * cellOhm * factor * S0 + lead;
    if (!rest) {
      const cos = 1 / Math.sqrt(1 + grade * grade);
      const load = mass * G * cos * (crr + grade) + drag * (v + wind) * Math.abs(v + wind);
      const push = (kt * motorA - iron(omega)) * ratio * eta * n / radius;
      asked = Math.min(felt * rate + load, push);
      acceleration = (asked - load) / felt;
      const through = asked >= 0 ? asked / eta : asked * eta;
      current = (through * radius / (ratio * n) + lost) / kt;
      if (current < 0) current = Math.max(current, -brakeMost(v, omega, lost, heat, openV, ohm));
    }
    const fixed = n * (kt * omega * current + heat * current * current + idle);
    const steady = n * switching * Math.abs(current);
    const half = (openV - ohm * steady) / 2;
    const busV = half + Math.sqrt(half * half - ohm * fixed);
    const packA = fixed / busV + steady, amps = packA / parallel;
    const copper = n * (heat - switchOhm) * current * current;
    const controller = busV * packA - n * kt * current * omega - copper;
    const pack = series * ocv(z) * packA - busV * packA - lead * packA * packA;
    const toCase = (windingC - caseC) / innerK;
    const toAir = (caseC - celsius) * (1 + COOLING * v) / outerK;
    return [
      v, acceleration, -amps / capacity, (amps - j1) / TAU1, (amps - j2) / TAU2,
      (pack - PACK_G * packKg * (cellC - celsius)) / (PACK_C * packKg),
      (copper / n - toCase) / (COPPER_SHARE * COPPER_C * motorKg),
      (lost * omega + toCase - toAir) / ((1 - COPPER_SHARE) * STEEL_C * motorKg),
      (controller - (switchC - celsius) / sinkK) / (CONTROLLER_C * controllerKg),
    ];
  }

  const X = 0, V = 1, Z = 2, WINDING = 6;
  let state = [0, 0, START, 0, 0, celsius, celsius, celsius, celsius], time = 0, hottest = celsius;

  function stepped(h, rate, grade) {
    const by = (k, part) => state.map((value, i) => value + part * k[i]);
    const k1 = motion(state, rate, grade), k2 = motion(by(k1, h / 2), rate, grade);
    const k3 = motion(by(k2, h / 2), rate, grade), k4 = motion(by(k3, h), rate, grade);
    return state.map((value, i) => value + h / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]));
  }
  const take = (next, h) => {
    state = next;
    time += h;
    hottest = Math.max(hottest, state[WINDING]);
  };
  function go(span, step, rate, grade) {
    span = Math.min(span, END - time);
    const count = Math.ceil(span / step - 1e-9);
    for (let k = 0; k < count; k++) take(stepped(span / count, rate, grade), span / count);
  }
  function speedUp() {
    while (time < END && state[V] < CRUISE) {
      let h = Math.min(0.1, END - time), next = stepped(h, RATE, GRADE);
      // The last step ends at the speed wished for: the speed is nearly straight in it.
      for (let k = 0; k < 3 && next[V] > CRUISE + 1e-12; k++) {
        h *= (CRUISE - state[V]) / (next[V] - state[V]);
        next = stepped(h, RATE, GRADE);
      }
      take(next, h);
      if (Math.abs(state[V] - CRUISE) < 1e-9) state[V] = CRUISE;
    }
  }
  while (time < END) {
    const begun = state[X];
    state[V] = 0;
    speedUp();
    go((begun + LEG / 2 - state[X]) / CRUISE, 1, 0, GRADE);
    go((begun + LEG - CRUISE ** 2 / (2 * RATE) - state[X]) / CRUISE, 1, 0, -GRADE);
    for (const v of [FADE_HIGH, FADE_LOW, 0]) {
      if (time < END) {
        go((state[V] - v) / RATE, 0.1, -RATE, -GRADE);
        if (time < END) state[V] = v;
      }
    }
    go(REST, 1, null, 0);
  }
  return [state[X], state[Z], hottest];
}
