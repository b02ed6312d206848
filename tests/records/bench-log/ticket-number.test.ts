import { describe, expect, test } from "vitest";
import { nextTicketNumber } from "../../../src/records/bench-log/ticket-number.ts";

const on = (received_on: string, ...numbers: string[]) => numbers.map((ticket_no) => ({ ticket_no, received_on }));

describe("the next ticket number", () => {
  test("counts on in the shape most of the last tickets have, with their zeros", () => {
    expect(nextTicketNumber(on("2026-03-02", "R-1042", "R-1041", "W7"), "2026-03-03")).toBe("R-1043");
    expect(nextTicketNumber(on("2026-03-02", "004417", "004418"), "2026-03-03")).toBe("004419");
    expect(nextTicketNumber(on("2026-03-02", "J99b"), "2026-03-03")).toBe("J100b");
  });

  test("counts on from a reel at the bench that is not in the records yet", () => {
    expect(nextTicketNumber([{ ticket_no: "R-1050", received_on: null }, ...on("2026-03-02", "R-1042")], "2026-03-03")).toBe("R-1051");
  });

  test("begins anew in a new year where the shop's numbers carry the year and began anew before", () => {
    const years = [...on("2025-02-01", "2025-0002", "2025-0001"), ...on("2024-11-01", "2024-0310")];
    expect(nextTicketNumber(years, "2025-02-02")).toBe("2025-0003");
    expect(nextTicketNumber(years, "2026-01-05")).toBe("2026-0001");
    expect(nextTicketNumber(on("2025-12-30", "25-0312"), "2026-01-05")).toBe("26-0001");
  });

  test("goes on over the new year where it went on before", () => {
    const years = [...on("2025-02-01", "25-0312", "25-0311"), ...on("2024-11-01", "24-0310")];
    expect(nextTicketNumber(years, "2026-01-05")).toBe("26-0313");
  });

  test("does not take two digits inside a longer number for the year", () => {
    expect(nextTicketNumber(on("2026-03-02", "R-126-7"), "2027-01-02")).toBe("R-126-8");
  });

  test("of an empty shop, or of numbers nobody can count on, is 0001", () => {
    expect(nextTicketNumber([], "2026-03-03")).toBe("0001");
    expect(nextTicketNumber(on("2026-03-02", "blue tray", "12345678901234567890"), "2026-03-03")).toBe("0001");
  });
});
