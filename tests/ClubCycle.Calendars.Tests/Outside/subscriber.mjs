// Plays a calendar that keeps events by UID (RFC 5546, 2.1.5: the higher SEQUENCE wins, then the later DTSTAMP) and polls one file after the other.
// Prints what it holds after each poll: one tab-separated line an event.
import { readFileSync } from "node:fs";
import ICAL from "ical.js";

const told = (event) => JSON.stringify(["dtstart", "dtend", "summary", "location", "status"].map((name) => event.getFirstPropertyValue(name)?.toString() ?? null));
const held = new Map();

process.argv.slice(2).forEach((path, poll) => {
  const calendar = new ICAL.Component(ICAL.parse(readFileSync(path, "utf8")));
  const seen = new Set();
  for (const event of calendar.getAllSubcomponents("vevent")) {
    const [uid, sequence] = [event.getFirstPropertyValue("uid"), event.getFirstPropertyValue("sequence")];
    const stamp = event.getFirstPropertyValue("dtstamp").toString();
    if (seen.has(uid)) throw new Error(`poll ${poll}: ${uid} comes twice`);
    seen.add(uid);
    const known = held.get(uid);
    if (known && (sequence < known.sequence || stamp < known.stamp)) throw new Error(`poll ${poll}: ${uid} goes back from ${known.sequence} ${known.stamp} to ${sequence} ${stamp}`);
    if (known && told(event) !== known.told && sequence <= known.sequence) throw new Error(`poll ${poll}: ${uid} changed from ${known.told} to ${told(event)} without a higher sequence`);
    held.set(uid, { sequence, stamp, told: told(event), event });
  }
  for (const uid of [...held.keys()].filter((uid) => !seen.has(uid))) held.delete(uid);
  for (const [uid, { event }] of held) {
    const value = (name) => event.getFirstPropertyValue(name);
    const moment = (time) => (time.isDate ? time.toString() : time.toJSDate().toISOString().replace(".000Z", "Z"));
    console.log([poll, uid, moment(value("dtstart")), moment(value("dtend")), value("status"), value("location") ?? "", value("summary")].join("\t"));
  }
});
