// Prints what ical.js makes of calendar files: one tab-separated line an event.
import { readFileSync } from "node:fs";
import ICAL from "ical.js";

const moment = (time) => (time.isDate ? time.toString() : time.toJSDate().toISOString().replace(".000Z", "Z"));

process.argv.slice(2).forEach((path, number) => {
  const calendar = new ICAL.Component(ICAL.parse(readFileSync(path, "utf8")));
  for (const event of calendar.getAllSubcomponents("vevent")) {
    const value = (name) => event.getFirstPropertyValue(name);
    const categories = event.getAllProperties("categories").flatMap((property) => property.getValues());
    const alarms = event.getAllSubcomponents("valarm").map((alarm) => -alarm.getFirstPropertyValue("trigger").toSeconds() / 60);
    console.log(
      [number, value("uid"), moment(value("dtstart")), moment(value("dtend")), value("sequence"), moment(value("last-modified")), value("status"),
        categories.join("|"), alarms.join(","), value("location") ?? "", value("summary")].join("\t"),
    );
  }
});
