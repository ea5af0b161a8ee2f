using Logbook.Checks;
using Logbook.Handover;
using Logbook.Handover.Tests;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Notes.Tests.BadShifts;

/// <summary>
/// The starter site's line with its cautions, a few rounds and invented people, for shifts that go badly. Night 24 November
/// belongs to crew C, the day after it to crew D.
/// </summary>
internal sealed class BadLine : IDisposable
{
    private const string Rounds = """
        [[round]]
        id = "hourly"
        title = "Line round"
        every = "1h"
        early = "15m"
        late = "20m"
        points = ["SL-T1", "SL-F1", "LM-F1", "RG-L", "WT-L", "WW-L"]

        [[round]]
        id = "field"
        title = "Field walk"
        at = ["00:00", "04:00", "08:00", "12:00", "16:00", "20:00"]
        early = "30m"
        late = "30m"
        takes = "25m"
        place = "field"
        points = ["SL-EYE", "SL-TRIP", "SL-HATCH", "ST-H2S1", "ST-H2S2"]

        [[round]]
        id = "titration"
        title = "White liquor titration"
        at = ["20:00", "00:00", "06:00", "12:00"]
        late = "30m"
        points = ["WL-A", "WL-B", "WL-C"]

        [[round]]
        id = "morning"
        title = "Sump and lime bin"
        at = ["06:00"]
        late = "30m"
        points = ["ST-SC", "LM-L"]

        """;

    private const string Titration = """

        [[calculation]]
        use = "end-points"
        name = "white liquor"
        inputs.a = "WL-A"
        inputs.b = "WL-B"
        inputs.c = "WL-C"
        outputs.causticity = "WL-CE"
        """;

    // The usual of each point, so that a shift's script names what is not.
    private static readonly Dictionary<string, string[]> Usual = new(StringComparer.Ordinal)
    {
        ["hourly"] = ["SL-T1=101.2", "SL-F1=301", "LM-F1=16.40", "RG-L=61.0", "WT-L=62.0", "WW-L=58.0"],
        ["field"] = ["SL-EYE=1", "SL-TRIP=1", "SL-HATCH=1", "ST-H2S1=0.2", "ST-H2S2=0.1"],
        ["morning"] = ["ST-SC=1.20", "LM-L=72"],
    };

    private readonly SmallLine _line;
    private readonly Pins _pins;

    public BadLine(string begins)
    {
        _line = new SmallLine(SmallLine.At(begins), Files(), [Some.EndPoints.Loaded]);
        _pins = new Pins(new PinsInMemory(), rounds: 1);
        foreach (var person in Desk.Site.People)
        {
            _pins.Set(person.Code, FlowLine.Pin);
        }
    }

    public Desk Desk => _line.Desk;

    public SignWith Sign => new(_pins, _ => FlowLine.Pin);

    public BadLine At(string iso)
    {
        _line.Clock(iso);
        return this;
    }

    /// <summary>A round with its usual values but for what is named: <c>SL-T1=103.4</c>, <c>LM-L=-:instrument faulty</c>.</summary>
    public long Round(string id, string by, params string[] other) => Round(id, by, walkStart: null, other);

    public long Round(string id, string by, DateTimeOffset? walkStart, params string[] other)
    {
        var named = other.ToDictionary(o => o.Split('=')[0], o => o, StringComparer.Ordinal);
        IEnumerable<string> readings = Usual.TryGetValue(id, out var usual) ? usual.Select(u => named.GetValueOrDefault(u.Split('=')[0], u)) : other;
        return _line.Record(new EntryRequest(by, [.. readings.Select(SmallLine.Typed)]) { Round = id, WalkStart = walkStart, WalkEnd = walkStart?.AddMinutes(20) });
    }

    /// <summary>Readings beside the rounds.</summary>
    public long Record(string by, params string[] readings) => Record(new EntryRequest(by, [.. readings.Select(SmallLine.Typed)]));

    public long Record(EntryRequest request) => _line.Record(request);

    /// <summary>Corrects the newest reading of the point.</summary>
    public long Correct(string by, string pair, string why) =>
        Saved(Writing.Correct(Desk, Desk.State.Latest[pair.Split('=')[0]].Seq, SmallLine.Typed(pair), why, by));

    public long Carry(string by, string kind, string on, string text, string? until = null, params (string Name, string Value)[] fields) => Saved(Writing.AddCarried(
        Desk, new Carry(kind, on, text, until is null ? null : SmallLine.At(until), null, fields.ToDictionary(f => f.Name, f => f.Value, StringComparer.Ordinal)), by));

    public long Confirm(string by, long id, bool seen = true, string? changed = null, params (string Name, string Value)[] fields) =>
        Saved(Writing.ConfirmCarried(Desk, new CarryConfirmed(id, seen, changed, fields.ToDictionary(f => f.Name, f => f.Value, StringComparer.Ordinal), null), by));

    public long State(string by, string equipment, string state, string why) => Saved(Writing.ChangeState(Desk, equipment, state, null, why, by));

    public long Remark(string by, string text, string? on = null) => Saved(Writing.Remark(Desk, text, on, null, by));

    public long Upset(string by, string? since, string why) => Saved(Writing.BeginUpset(Desk, since is null ? null : SmallLine.At(since), why, by));

    public long UpsetOver(string by, string why) => Saved(Writing.EndUpset(Desk, null, why, by));

    public long Order(string by, string text) => Saved(Writing.GiveOrder(Desk, text, null, by));

    public long Read(string by, long order) => Saved(Writing.SeeOrder(Desk, order, by));

    public long Tell(string by, string department, string text) => Saved(Writing.TellDepartment(Desk, department, text, by));

    /// <summary>The first holder of the log.</summary>
    public BadLine HeldBy(string by)
    {
        Open(by);
        Took(Accepting.Accept(Desk, Sign, new AcceptRequest(by, ["what is open at the slaker"], Right(by)) { Unattended = "the first shift of this log" }));
        return this;
    }

    /// <param name="declared">Sections that were not simply checked: <c>acid=not-checked</c>, <c>injury=change</c>.</param>
    public BadLine Prepare(string by, IReadOnlyList<string> ifThen, IReadOnlyList<string> words, params string[] declared)
    {
        var others = declared.Select(d => d.Split('=')).ToDictionary(d => d[0], d => d[1], StringComparer.Ordinal);
        var sections = HazardSections.All.ToDictionary(s => s, s => others.GetValueOrDefault(s, "checked"), StringComparer.Ordinal);
        Took(Preparing.Prepare(Desk, Sign, new PrepareRequest(by, sections, ifThen, words)));
        return this;
    }

    public BadLine Accept(string by, string? reservation, params string[] first)
    {
        Open(by);
        Took(Accepting.Accept(Desk, Sign, new AcceptRequest(by, first, Right(by)) { Reservation = reservation }));
        return this;
    }

    public static void Took(Handed handed)
    {
        Assert.Null(handed.Refused);
        Assert.Empty(handed.Mistakes);
    }

    public void Open(string by)
    {
        foreach (var page in LineHeld.Pages)
        {
            Assert.NotNull(HandoverPages.Open(Desk, by, page).Page);
        }
    }

    public IReadOnlyList<int> Right(string by) => [.. HazardQuestions.For(Desk, by).Select(q => q.Right)];

    public void Dispose() => _line.Dispose();

    private static long Saved(Written written)
    {
        Assert.Empty(written.Mistakes);
        return written.Record!.Seq;
    }

    private static SiteFiles Files()
    {
        var shipped = SiteReader.Load(Path.Combine(AppContext.BaseDirectory, "templates", "site")).Value!.Texts;
        var toml = shipped[SiteFiles.SiteToml];
        string Between(string from, string to) => toml[toml.IndexOf(from, StringComparison.Ordinal)..toml.IndexOf(to, StringComparison.Ordinal)];
        (string Code, string Name, string Role, string Crew)[] people =
        [
            ("tal", "Tallow", "operator", "C"), ("qui", "Quill", "operator", "D"), ("har", "Harbour", "operator", "C"),
            ("lark", "Larkin", "supervisor", "-"), ("eng1", "Ostrow", "engineer", "-"),
        ];
        var staff = string.Concat(people.Select(p => $"[[person]]\ncode = \"{p.Code}\"\nname = \"{p.Name}\"\nrole = \"{p.Role}\"\n{(p.Crew == "-" ? "" : $"crew = \"{p.Crew}\"\n")}\n"));
        return new SiteFiles(new Dictionary<string, string>(shipped, StringComparer.Ordinal)
        {
            [SiteFiles.SiteToml] = Between("[site]", "[[person]]") + staff + Rounds + Between("[[equipment]]", "[[calculation]]") + Titration,
            // The margin to boiling needs its calculation; here the temperature has its own limits.
            [SiteFiles.PointsCsv] = shipped[SiteFiles.PointsCsv].Replace("SL-T1,Slaker temperature,slaker,degC,read,1,0.1,0.3,0,115,,,,,6,", "SL-T1,Slaker temperature,slaker,degC,read,1,0.1,0.3,0,115,,98,102.6,103.2,6,", StringComparison.Ordinal),
        });
    }
}
