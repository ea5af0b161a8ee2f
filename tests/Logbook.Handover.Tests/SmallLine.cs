using System.Globalization;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;
using Microsoft.Extensions.Time.Testing;

namespace Logbook.Handover.Tests;

/// <summary>An invented line with a few points and rounds, a clock that stands still, and a journal in memory: written to as people write.</summary>
internal sealed class SmallLine : IDisposable
{
    private const string Rounds = """
        [[person]]
        code = "op2"
        name = "Operator two"
        role = "operator"
        crew = "C"

        [[person]]
        code = "op3"
        name = "Operator three"
        role = "operator"
        crew = "D"

        [[person]]
        code = "sup1"
        name = "Supervisor one"
        role = "supervisor"

        [[round]]
        id = "hourly"
        title = "Line round"
        every = "1h"
        points = ["SL-T1", "SL-L1", "WT-L"]

        [[round]]
        id = "field"
        title = "Field walk"
        at = ["20:00", "00:00", "04:00", "08:00", "12:00", "16:00"]
        early = "30m"
        late = "30m"
        takes = "25m"
        place = "field"
        points = ["SL-EYE", "ST-H2S"]

        [[round]]
        id = "shift"
        title = "Samples of the shift"
        per = "shift"
        late = "30m"
        points = ["CL-G"]

        [[equipment]]
        code = "slaker"
        name = "Slaker"
        area = "slaker"

        [[equipment]]
        code = "wl-filter"
        name = "White liquor filter"
        area = "white-liquor-filter"

        [[equipment]]
        code = "mud-pump"
        name = "Lime mud pump"
        area = "lime-mud-tank"

        [reasons]
        not_taken = ["no time", "instrument faulty", "other"]
        relief = ["injured or ill", "called away", "other"]
        not_yet = ["critical step running", "other"]
        """;

    private const string Points = """
        tag,description,area,unit,kind,decimals,resolution,u,lowest,highest,urgent_low,watch_low,watch_high,urgent_high,step,stale,equipment,sample,estimates,choices,always
        SL-T1,Slaker temperature,slaker,degC,read,1,0.1,0.3,0,115,,98,102.6,103.2,,,slaker,,,,yes
        SL-L1,Lime feed,slaker,t/h,read,1,0.1,2%,0,40,,,,,,,slaker,,,,
        WT-L,White liquor tank level,white-liquor-tank,%,read,1,0.1,0.5,0,100,15,30,85,94,,,,,,,
        SL-EYE,Eyewash at the slaker,slaker,choice,read,,,,,,,,,,,6h,,,,works;out!urgent,yes
        ST-H2S,H2S at the sump,site,ppm,read,1,0.1,0.3,0,500,,,1,5,,6h,,,,,yes
        CL-G,"Grits collected, wet",classifier,kg,read,0,5,3%,0,4000,,,,,,14h,,,,,
        """;

    private const string Cautions = """
        [[caution]]
        hazard = "Hot caustic"
        trigger = "always"
        text = "Liquor burns by heat and alkali."
        ppe = "Goggles and face shield."
        first_aid = "Water only, at once, until medical help takes over."
        source = "common practice, no source"
        revision = "1"
        approved_by = "Engineer one"

        [[caution]]
        hazard = "Acid"
        trigger = ["state:acid", "carry:wash"]
        text = "Acid on sulphide liquor frees H2S; smell gives no warning."
        ppe = "Personal monitor."
        first_aid = "Leave upwind and raise the alarm."
        source = "common practice, no source"
        revision = "1"
        approved_by = ""

        [[caution]]
        hazard = "Entry"
        trigger = "carry:permit"
        text = "A permit does not roll over a shift change by itself."
        ppe = "As the permit says."
        first_aid = "Do not follow; raise the alarm."
        source = "common practice, no source"
        revision = "1"
        approved_by = "Engineer one"

        [[caution]]
        hazard = "Lock-out"
        trigger = "carry:isolation"
        text = "Each crew verifies at the board."
        ppe = "As the permit says."
        first_aid = "Water only for alkali."
        source = "common practice, no source"
        revision = "1"
        approved_by = "Engineer one"

        [[caution]]
        hazard = "Boil-over"
        trigger = "limit:SL-T1"
        text = "Keep clear of the hatches."
        ppe = "Face and body cover."
        first_aid = "Water only, at once."
        source = "common practice, no source"
        revision = "1"
        approved_by = "Engineer one"
        """;

    private readonly InMemoryJournal _journal = new();
    private readonly FakeTimeProvider _clock = new();

    public SmallLine(string begins)
        : this(At(begins))
    {
    }

    public SmallLine(DateTimeOffset begins)
    {
        _clock.SetUtcNow(begins);
        Desk = NewDesk(Rounds);
        Adopted(Some.Adopt(Desk, "the line starts", "eng1"));
    }

    /// <summary>Another line than the small one, by its own files; <c>eng1</c> must be an engineer of it.</summary>
    public SmallLine(DateTimeOffset begins, SiteFiles files, IReadOnlyList<LoadedCalculation> calculations)
    {
        _clock.SetUtcNow(begins);
        Desk = Some.Desk(_clock, _journal, files, calculations);
        Desk.Follow();
        Assert.Empty(Desk.NotReady);
        Adopted(Some.Adopt(Desk, "the line starts", "eng1"));
    }

    public Desk Desk { get; private set; }

    /// <summary>Puts files in force that have one round more, <c>extra</c>, each hour.</summary>
    public void AdoptAnotherRound()
    {
        Desk = NewDesk(Rounds + "\n[[round]]\nid = \"extra\"\ntitle = \"Extra round\"\nevery = \"1h\"\npoints = [\"WT-L\"]\n");
        Adopted(Some.Adopt(Desk, "one round more", "eng1"));
    }

    /// <summary>Puts files in force in which the crews change the day on which their pattern begins.</summary>
    public void AdoptAnotherPattern()
    {
        Desk = NewDesk(Rounds, ("anchor = 2026-01-01", "anchor = 2026-01-03"));
        Adopted(Some.Adopt(Desk, "the crews have swapped", "eng1"));
    }

    /// <summary>Puts files in force in which the slaker's watch limit is wider: 103.1 degC.</summary>
    public void AdoptWiderLimit()
    {
        Desk = NewDesk(Rounds, Points.Replace(",102.6,", ",103.1,", StringComparison.Ordinal));
        Adopted(Some.Adopt(Desk, "the watch limit fired too often", "eng1"));
    }

    /// <summary>Puts files in force in which a trip of the slaker is looked at, and the guards of the mud pump.</summary>
    public void AdoptATrip()
    {
        Desk = NewDesk(Rounds, Points + "\nSL-TRIP,Low-flow lime trip,slaker,choice,read,,,,,,,,,,,6h,slaker,,,in service;defeated!urgent,yes\nMP-GUARD,Guards of the lime mud pump,lime-mud-tank,choice,read,,,,,,,,,,,6h,mud-pump,,,all in place;off!urgent,yes\n");
        Adopted(Some.Adopt(Desk, "the trip is looked at", "eng1"));
    }

    /// <summary>Puts files in force in which gas that jumps is found too.</summary>
    public void AdoptGasStep()
    {
        Desk = NewDesk(Rounds, Points.Replace("1,5,,6h", "1,5,3,6h", StringComparison.Ordinal));
        Adopted(Some.Adopt(Desk, "the heads may jump", "eng1"));
    }

    /// <summary>Puts files in force in which leaks at the causticizers are looked at.</summary>
    public void AdoptLeaks()
    {
        Desk = NewDesk(Rounds, Points + "\nCA-LEAK,Leaks at causticizers and launders,causticizers,choice,read,,,,,,,,,,,6h,,,,dry;weeping!watch;running or spraying!urgent,yes\n");
        Adopted(Some.Adopt(Desk, "leaks are looked at", "eng1"));
    }

    /// <summary>Puts files in force in which the slaker has a level, a rake and a margin to boiling, and the filters a gas head of their own.</summary>
    public void AdoptMorePoints()
    {
        Desk = NewDesk(Rounds, Points + "\nSL-L,Slaker level,slaker,%,read,1,0.1,0.5,0,100,10,30,80,92,,,slaker,,,,\nSL-TQ,Rake torque of the slaker,slaker,%,read,0,1,1,0,130,,,50,75,,,slaker,,,,\nSL-M,Margin of the slaker to boiling,slaker,K,read,1,0.1,0.3,0,50,1,2,,,,,slaker,,,,yes\nFI-H2S,H2S at the filters,site,ppm,read,1,0.1,0.3,0,500,,,1,5,,6h,,,,,yes\n");
        Adopted(Some.Adopt(Desk, "more is read", "eng1"));
    }

    /// <summary>Puts files in force that cite a policy for what the audit says of one person.</summary>
    public void AdoptPolicy()
    {
        Desk = NewDesk(Rounds + "\n[policy]\npurpose = \"to mend rounds\"\nreaders = [\"sup1\"]\nretention = \"as long as the log\"\nconsultation = \"agreed with the crews\"\n");
        Adopted(Some.Adopt(Desk, "agreed with the crews", "eng1"));
    }

    public static DateTimeOffset At(string iso) => DateTimeOffset.Parse(iso, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);

    /// <summary>Moves the clock forward to an instant: <c>2026-11-24T19:00-05:00</c>.</summary>
    public SmallLine Clock(string iso) => Clock(At(iso));

    public SmallLine Clock(DateTimeOffset at)
    {
        _clock.SetUtcNow(at);
        return this;
    }

    /// <summary>An entry typed now: <c>SL-T1=101.2</c>, <c>SL-L1=-:no time</c> for one that was not taken.</summary>
    public long Record(string? round, params string[] readings) => Record(new EntryRequest("op1", [.. readings.Select(Typed)]) { Round = round });

    public long Record(EntryRequest request) => Saved(RecordEntry.Run(Desk, request));

    public static TypedReading Typed(string pair)
    {
        var (point, text) = (pair.Split('=')[0], pair.Split('=')[1]);
        return text.StartsWith("-:", StringComparison.Ordinal)
            ? new TypedReading(point, "-", Place.Unknown) { Why = text[2..] }
            : Some.Reading(point, text);
    }

    public long Carry(string kind, string on, string text, DateTimeOffset? until = null, params (string Name, string Value)[] fields) =>
        Saved(Writing.AddCarried(Desk, new Carry(kind, on, text, until, null, fields.ToDictionary(f => f.Name, f => f.Value, StringComparer.Ordinal)), "op1"));

    public long Close(long id, string why) => Saved(Writing.CloseCarried(Desk, new CarryClosed(id, why), "op1"));

    public long State(string equipment, string state, string? why = null) => Saved(Writing.ChangeState(Desk, equipment, state, null, why, "op1"));

    public long Correct(long target, string pair, string why) => Saved(Writing.Correct(Desk, target, Typed(pair), why, "op1"));

    public long Remark(string text, string? on = null) => Saved(Writing.Remark(Desk, text, on, null, "op1"));

    public IReadOnlyList<DueCheck> Due(string from, string to) => DueList.Between(Desk, At(from), At(to));

    /// <summary>Shifts, crews and people are those of <see cref="Some"/>; rounds, points and cautions are this line's.</summary>
    private Desk NewDesk(string rounds, params (string Old, string New)[] words) => NewDesk(rounds, Points, words);

    private Desk NewDesk(string rounds, string points, params (string Old, string New)[] words)
    {
        var files = new SiteFiles(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            [SiteFiles.SiteToml] = Some.Changed(words).Texts[SiteFiles.SiteToml].Split("[[round]]")[0] + rounds,
            [SiteFiles.PointsCsv] = points,
            [SiteFiles.CautionsToml] = Cautions,
        });
        var desk = Some.Desk(_clock, _journal, files, []);
        desk.Follow();
        Assert.Empty(desk.NotReady);
        return desk;
    }

    public void Dispose() => _journal.Dispose();

    private static void Adopted(Handed handed) => Assert.NotNull(handed.Record);

    private static long Saved(Written written)
    {
        Assert.Empty(written.Mistakes);
        return written.Record!.Seq;
    }
}
