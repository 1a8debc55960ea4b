package smt

// goldenAirframe has a little of everything: rates with expo, a trim, a scaled mix, a
// smooth curve, a linkage, a measured table and a motor that a switch stops.
const goldenAirframe = `hingeline: 1
name: Wren
controls:
  roll stick: {axis: roll, trim: 10%}
  throttle: lever
  flap lever: lever
  rate switch: [low, high]
  motor switch: [safe, live]
demands:
  roll:
    from: roll stick
    rates:
      - {when: rate switch is high, throw: 90%, expo: 30%}
      - {throw: 60%, expo: -20%}
  fade: {from: flap lever, curve: {0%: 100%, 100%: 40%}}
  flap: {from: flap lever, curve: {0%: 0%, 30%: 40%, 100%: 60%}, smooth: true}
  throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}
channels:
  1:
    name: port aileron
    mix:
      - roll
      - {scale_by: fade}
      - {add: flap, share: 20%, when: rate switch is low}
  2:
    name: starboard aileron
    mix:
      - {add: roll, share: -100%}
      - {scale_by: fade}
      - {add: flap, share: 20%, when: rate switch is low}
  3:
    name: motor
    mix:
      - throttle
      - {replace_with: -100%, when: motor switch is safe}
    failsafe: -100%
surfaces:
  port aileron:
    channel: 1
    servo: {swing_deg: 45, plus_swings: fore}
    linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 62, horn: below}
  starboard aileron:
    channel: 2
    servo: {swing_deg: 45, plus_swings: fore}
    linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 62, horn: below}
  spoiler: {channel: 2, measured: {-100%: 0°, 0%: 10° up, 100%: 30° up}}
motors:
  motor: {channel: 3, stopped_when: motor switch is safe}
`
