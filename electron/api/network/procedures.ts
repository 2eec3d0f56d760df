import { z } from "zod";
import { inGroups } from "../../domain/devices/codes.ts";
import { devicePlaceSchema } from "../../domain/devices/place.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { portSchema } from "../../network/kept.ts";
import type { Network, NetworkView } from "../../network/network.ts";
import type { Desk } from "../door/desk.ts";
import { allow, router } from "../door/trpc.ts";

const ms = z.number().min(0);

const deviceSchema = z.object({
  id: z.string(),
  name: z.string(),
  place: devicePlaceSchema,
  /** ISO 8601. */
  joinedAt: z.string(),
  /** Since it was last heard of; null for one that was not, since the program started. */
  heardMs: ms.nullable(),
  /** What it said of itself: entries that wait on it, and its battery in per cent where the browser tells. */
  word: z.object({ waiting: z.int(), battery: z.int().nullable() }).nullable(),
  /** True where it keeps nothing of anybody who was deleted. */
  isCompared: z.boolean(),
});

const viewSchema = z.object({
  on: z.object({ address: z.string(), port: z.int(), url: z.string(), shortForm: z.string() }).nullable(),
  addresses: z.array(z.object({ way: z.string(), address: z.string() })),
  port: z.int(),
  /** The code in groups, what a QR code has to say, and how long both hold; null while nobody can join. */
  code: z.object({ code: z.string(), link: z.string(), leftMs: ms }).nullable(),
  shutMs: ms,
  asking: z.array(z.object({ id: z.string(), name: z.string() })),
  devices: z.array(deviceSchema),
});

const device = z.object({ deviceId: z.uuid() });

/** The screens at the stations: whether devices can reach this computer, and which of them are used for what. */
export const network = router({
  view: allow("organiser")
    .output(viewSchema)
    .query(({ ctx: { desk } }) => viewOf(networkOf(desk).view())),

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

function viewOf({ code, asking, ...view }: NetworkView): z.infer<typeof viewSchema> {
  const shown = view.on === null || code === null ? null : codeOf(view.on.url, code);
  return {
    ...view,
    addresses: [...view.addresses],
    code: shown,
    asking: asking.map(({ id, name }) => ({ id, name })),
    devices: [...view.devices],
  };
}

/** The code after `#` stays in the browser that reads it: no request carries it. */
function codeOf(url: string, { code, leftMs }: NonNullable<NetworkView["code"]>) {
  return { code: inGroups(code, " "), link: `${url}#${code}`, leftMs };
}
