using Logbook.Handover;

namespace Logbook.Notes;

/// <summary>Invented notes that hold something of everything, for whoever writes a template: each hazard, drafts, own words, curves.</summary>
internal static class ExampleNote
{
    private static readonly DateTimeOffset Evening = new(2026, 11, 24, 19, 0, 0, TimeSpan.FromHours(-5));

    private static readonly NoteSection CanHurt = new("can-hurt", "CAN HURT",
    [
        new("inside", "Example tank: inspection; until 08:00. Counted 1 at 06:20. Count again with the attendant at takeover. (#7)"),
        new("permit", "Example filter: cloth change; until 10:00. Nothing is recorded of who is inside; ask the attendant. (#8)"),
        new("locked", "Example pump, DO NOT START: seal change. Verify at the lock board. (#9)"),
        new("defeated", "Example slaker: low-flow trip bridged; instead flow by hand each half hour. (#11)"),
        new("out", "Example eyewash: frozen; instead the one at the stair. (#12)"),
        new("acid", "Example filter: in acid since 23:04. (#13)"),
        new("gas", "H2S at the example sump 2.1 ppm. Read 05:10 (#14)"),
        new("seen", "Example hatch: open. Read 05:12 (#15)"),
        new("above", "acid: NOT CHECKED, Example one 06:28"),
        new("others", "injury, release: none recorded; checked, Example one 06:28"),
    ]) { Beside = "as recorded here; the lock board and the permit office rule" };

    private static readonly NoteSection[] Rest =
    [
        new("not-normal", "NOT NORMAL", [new("EX-T1", "URGENT: Example temperature 103.4 degC. At 02:04; from 03:04 without this finding. (#16)")]),
        new("moving", "MOVING", [new("EX-L1", "Example level 48.0 at 19:04, 75.5 at 06:04: rising 2.5 % an hour. (#17)")]),
        new("not-done", "NOT DONE", [new("missed", "Example round 23:00: no reading in the window, 3 checks")]),
        new("stocks", "STOCKS", [new("EX-L1", "Example level 75.5 % at 06:04 (#17)")]),
        new("still-open", "STILL OPEN", [new("action", "Example classifier: tighten the guard bolt; 5 shifts (#3)")]),
        new("coming", "COMING", [new("08:00", "permit ends, example tank (#7)")]),
        new("orders", "ORDERS", [new("new 18", "Example order. Read by nobody yet (#18)")]),
        new("remarks", "WRITTEN IN THE SHIFT", [new("04:04", "Example one: bowl may climb (#19)")]),
    ];

    private static readonly NoteTrend Curve = new("EX-T1", "Example temperature", "degC", [.. Enumerable.Range(0, 12).Select(i => (Evening.AddHours(i), 100.5 + (0.2 * i)))], 98, 102.6, null, 103.2);

    private const string Head = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef";

    public static HandoverNote Shift { get; } = new()
    {
        Site = "Example line, invented",
        ShiftId = "2026-11-24-N-C",
        Period = "Shift N, crew C, Tue 24 Nov 19:00 to Wed 25 Nov 07:00",
        DrawnAt = "Wed 25 Nov 06:40, the shift still running",
        TakeLonger = ["person in example tank", "trip defeated"],
        Sections = [CanHurt, .. Rest, new("since-prepared", "SINCE PREPARED", [new("06:45", "CAN HURT: Example isolation opened. (#22)"), new("06:50", "hosed down (#23)")])],
        Cautions = [new("Example hazard", "An example of a caution.", "What to wear.", "Water only.", "no source", "1", Draft: true)],
        Trends = [Curve],
        Gave = "Example one, prepared 06:31",
        OwnWords = [new("Example two", "1 flow by hand first"), new("reservation", "acid not checked (Example two)")],
        Signatures = ["Example one 06:31: \"prepared; told as far as I know it\"; by PIN (#21)"],
        Records = 23,
        Head = Head,
    };

    public static WeekNote Week { get; } = new()
    {
        Site = "Example line, invented",
        Period = "Wed 18 Nov 07:00 to Wed 25 Nov 07:00",
        DrawnAt = "Wed 25 Nov 07:00, the last shift's end; entries typed later are in it",
        InCharge = "Example two holds the line since 06:57",
        Sections = [CanHurt, new("shifts", "SHIFTS", [new("Tue 24 N C", "of 43 checks 27 on time, 1 late, 1 not taken, 14 missed; taken over 06:57 (#31)")]), .. Rest],
        Trends = [Curve],
        Records = 23,
        Head = Head,
    };
}
