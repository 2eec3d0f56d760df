/**
 * The procedures that a device on the network may call, as far as the role of its place may: what is needed to hold a
 * station, to judge beside it, or to hold the check-in table or a big screen. Whatever is not named here is refused to every device: its lock, its
 * language and everything of the organiser's are the table's own.
 */
export const proceduresOfDevices: ReadonlySet<string> = new Set([
  ...["changes", "language.current", "lock.standing", "day.current", "day.protocols", "noise.get"],
  ...["checkIn.search", "checkIn.person", "checkIn.admit", "checkIn.walkUp", "checkIn.noShow"],
  ...["checkIn.withdraw", "checkIn.undo", "checkIn.counts", "checkIn.leagues", "people.setConsent"],
  ...["station.view", "station.find", "station.enter", "station.void", "station.standing", "station.history"],
  "station.lacks",
  ...["station.callAthlete", "station.uncall", "station.callNext"],
  ...["heat.view", "heat.gather", "heat.place", "heat.variant", "heat.move", "heat.sendBack"],
  ...[
    "heat.absent",
    "heat.clock",
    "heat.start",
    "heat.tap",
    "heat.undo",
    "heat.confirm",
    "heat.end",
    "heat.callOff",
  ],
  ...["board.view", "board.hidden", "board.hide"],
  ...["study.toRead", "study.find", "study.read"],
]);
