import { z } from "zod";
import { inGroups } from "../../domain/devices/codes.ts";
import { devicePlaceSchema } from "../../domain/devices/place.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { portSchema } from "../../network/kept.ts";
import type { Network, NetworkView } from "../../network/network.ts";
import type { Desk } from "../door/desk.ts";
import { allow, router } from "../door/trpc.ts";

const device = z.object({ deviceId: z.uuid() });

/** The screens at the stations: whether devices can reach this computer, and which of them are used for what. */
export const network = router({
  view: allow("organiser").query(({ ctx: { desk } }) => viewOf(networkOf(desk).view())),

  /** Lets other devices on the network of this address reach this computer. */
  turnOn: allow("organiser")
    .input(z.object({ address: z.union([z.ipv4(), z.ipv6()]), port: portSchema }))
    .mutation(({ ctx: { desk }, input }) => networkOf(desk).turnOn(input.address, input.port)),

  turnOff: allow("organiser").mutation(({ ctx: { desk } }) => networkOf(desk).turnOff()),

  /** Shows a code for two minutes; each device that gives it gets the next one shown. */
  openJoining: allow("organiser").mutation(({ ctx: { desk } }) => networkOf(desk).openJoining()),

  closeJoining: allow("organiser").mutation(({ ctx: { desk } }) => networkOf(desk).closeJoining()),

  /** Says what a device that asks is for; null sends it off. */
  answer: allow("organiser")
    .input(z.object({ askId: z.uuid(), place: devicePlaceSchema.nullable() }))
    .mutation(({ ctx: { desk }, input }) => networkOf(desk).answer(input.askId, input.place)),

  place: allow("organiser")
    .input(device.extend({ place: devicePlaceSchema }))
    .mutation(({ ctx: { desk }, input }) => networkOf(desk).place(input.deviceId, input.place)),

  /** Sends a device away at once; sending it away twice changes nothing. */
  sendAway: allow("organiser")
    .input(device)
    .mutation(({ ctx: { desk }, input }) => networkOf(desk).sendAway(input.deviceId)),

  sendAllAway: allow("organiser").mutation(({ ctx: { desk } }) => networkOf(desk).sendAllAway()),
});

function networkOf({ network }: Desk): Network {
  if (network === null) throw new Refusal("unavailable", sentence("network.notHere"));
  return network;
}

/** Adds to the code what a QR code has to say; null while nobody can join. */
function viewOf({ code, asking, ...view }: NetworkView) {
  const shown = view.on === null || code === null ? null : codeOf(view.on.url, code);
  return { ...view, code: shown, asking: asking.map(({ id, name }) => ({ id, name })) };
}

/** The code after `#` stays in the browser that reads it: no request carries it. */
function codeOf(url: string, { code, leftMs }: NonNullable<NetworkView["code"]>) {
  return { code: inGroups(code, " "), link: `${url}#${code}`, leftMs };
}
