// What the browser knows of the user's way of writing dates and numbers.
export function locale(): string {
  const language = navigator.language || "en";
  const one = (options: Intl.DateTimeFormatOptions, date: Date): string => new Intl.DateTimeFormat(language, { timeZone: "UTC", ...options }).format(date);
  const parts = new Intl.DateTimeFormat(language, { hour: "numeric", minute: "2-digit", timeZone: "UTC" });
  const order = new Intl.DateTimeFormat(language, { day: "numeric", month: "short", timeZone: "UTC" }).formatToParts(new Date(Date.UTC(2026, 9, 10)));
  const period = (hour: number): string => parts.formatToParts(new Date(Date.UTC(2026, 0, 1, hour))).find((p) => p.type === "dayPeriod")?.value ?? "";
  return JSON.stringify({
    language,
    decimal: new Intl.NumberFormat(language).formatToParts(1.5).find((p) => p.type === "decimal")?.value ?? ".",
    hour12: parts.resolvedOptions().hour12 ?? false,
    am: period(8), pm: period(20),
    dayFirst: order.findIndex((p) => p.type === "day") < order.findIndex((p) => p.type === "month"),
    months: Array.from({ length: 12 }, (_, m) => one({ month: "short" }, new Date(Date.UTC(2026, m, 10)))),
    weekdays: Array.from({ length: 7 }, (_, d) => one({ weekday: "short" }, new Date(Date.UTC(2026, 1, 1 + d)))),
    longWeekdays: Array.from({ length: 7 }, (_, d) => one({ weekday: "long" }, new Date(Date.UTC(2026, 1, 1 + d)))),
  });
}
