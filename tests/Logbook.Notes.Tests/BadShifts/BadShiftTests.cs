using Logbook.Handover;
using Logbook.Handover.Tests;

namespace Logbook.Notes.Tests.BadShifts;

/// <summary>Ten bad shifts on the starter site's line, each printed and approved by a person, and what must hold of every one.</summary>
public class BadShiftTests
{
    /// <summary>Name, how it came about, a moment of the shift whose note is printed, and the reasons to take longer.</summary>
    private static readonly (string Name, Func<BadLine> Shift, string Of, string[] Longer)[] All =
    [
        ("tank-trip-upset", TankTripAndUpset.Write, "2026-11-25T06:00-05:00", ["trip defeated", "isolation spans the change", "safety equipment out: Eyewash and shower at the slaker", "person in Lime mud tank", "acid wash", "taken over with a reservation: acid not checked; asking the laboratory 07:15"]),
        ("lost-flow", Nights.LostFlowAtTheChange, "2026-11-25T06:00-05:00", ["upset since 06:41", "Slaker starting up", "Green liquor flow to the slaker urgent", "Slaker temperature urgent"]),
        ("gas-relief", Nights.GasAndEmergencyRelief, "2026-11-25T06:00-05:00", ["White liquor filter in acid", "H2S at the filters urgent", "injury, told 02:36"]),
        ("power-nobody", Nights.PowerGoneAndNobodyThere, "2026-11-25T06:00-05:00", ["upset since 03:05"]),
        ("permits", Nights.PermitsOverTheChange, "2026-11-25T06:00-05:00", ["person in Causticizer 2, permit PAST", "isolation spans the change", "permit spans the change"]),
        ("splash", Days.SplashAndNoEyewash, "2026-11-25T06:00-05:00", ["safety equipment out: Eyewash and shower at the slaker", "Eyewash and shower at the filters: out", "Leaks at the white liquor filter, shell and flanges: running or spraying", "injury, told 23:50"]),
        ("weak-wash", Days.WeakWashLost, "2026-11-25T06:00-05:00", ["Weak wash tank level urgent", "Dissolving tank density urgent"]),
        ("hot-lime", Days.HotLimeAndGuardOff, "2026-11-25T18:00-05:00", ["isolation spans the change", "Lime dust and spills: wet lime or steam", "Guards of lime screw and elevator: off", "Lime temperature to the slaker urgent", "Classifier rake current urgent", "Guards of classifier rake and screw: off"]),
        ("long-night", Days.TheLongNight, "2026-11-01T06:00-05:00", ["Low-flow lime trip: defeated"]),
        ("shutdown", Days.Shutdown, "2026-11-24T18:00-05:00", ["isolation spans the change", "person in Raw green liquor tank", "person in Green liquor cooler", "person in Causticizer 1", "permit spans the change", "trip defeated", "safety equipment out: Eyewash and shower at the filters, water shut off", "upset since 07:00", "White liquor filter in acid"]),
    ];

    private static readonly string[] Order = ["CAN HURT", "NOT NORMAL", "MOVING", "NOT DONE", "STOCKS", "STILL OPEN", "COMING", "ORDERS", "WRITTEN IN THE SHIFT", "CAUTIONS", "This note only reminds;"];

    // What would say that something is safe, or that nothing is there. "All normal" and the like are never the program's to say.
    private static readonly string[] Forbidden = ["nobody inside", "no one inside", "all normal", "all clear", "all ok", "all good", "no hazards", "is safe", "safe to", "isolated", "acknowledged all", "vinegar", "boric"];

    public static TheoryData<string> Names => [.. All.Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_bad_shift_prints_as_approved(string name)
    {
        var (line, note) = Drawn(name);
        using var _ = line;

        Approved.Matches($"bad-{name}.text", Notes.Write(note, NoteFormat.Text));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_hazard_is_cut_counted_away_or_moved_from_the_top(string name)
    {
        var (line, note) = Drawn(name);
        using var _ = line;
        var hazards = NowView.Of(line.Desk).Hazards;

        foreach (var format in Enum.GetValues<NoteFormat>())
        {
            var print = Notes.Write(note, format);
            Assert.Empty(MustStand.Of(note).MissingIn(print, format));
            var words = print[..print.IndexOf("NOT NORMAL", StringComparison.Ordinal)];
            Assert.All(note.Sections[0].Lines, l => Assert.Contains(Bare(Escape.For(format, l.Text)), Bare(words), StringComparison.Ordinal));
            Assert.All(hazards, h => Assert.Contains(Bare(Escape.For(format, $"(#{h.Seq})")), Bare(words), StringComparison.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_page_keeps_its_order_its_width_and_its_words(string name)
    {
        var (line, note) = Drawn(name);
        using var _ = line;

        var page = Notes.Write(note, NoteFormat.Text);

        var places = Order.Select(title => page.IndexOf("\n" + title, StringComparison.Ordinal)).ToList();
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
        Assert.All(page.Split('\n'), l => Assert.True(Columns.Count(l) <= 72, l));
        var words = string.Join(' ', page.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.All(Forbidden, word => Assert.DoesNotContain(word, words, StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_template_and_no_format_prints_a_word_that_calls_something_safe(string name)
    {
        var (line, note) = Drawn(name);
        using var _ = line;
        var at = SmallLine.At(All.Single(s => s.Name == name).Of);

        foreach (var format in Enum.GetValues<NoteFormat>())
        {
            string[] prints = [Notes.Write(note, format), Notes.Write(LongNote.Of(line.Desk, at), NoteKind.Long, format), Notes.Write(WeekNote.Of(line.Desk, at), format)];
            Assert.All(prints, print => Assert.All(Forbidden, word => Assert.DoesNotContain(word, string.Join(' ', print.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.OrdinalIgnoreCase)));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_reasons_to_take_longer_stand_above_the_page_in_words(string name)
    {
        var (line, note) = Drawn(name);
        using var _ = line;

        Assert.Equal(All.Single(s => s.Name == name).Longer.Order(StringComparer.Ordinal), note.TakeLonger.Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    /// <summary>A4 has 93 lines at eight an inch; the worst of the ten may take a second sheet, everybody else's is one page.</summary>
    [Theory]
    [InlineData("tank-trip-upset", 122)] // with the reservation above it all
    [InlineData("shutdown", 130)] // twenty-one hazards, none of them cut
    [InlineData("gas-relief", 93)]
    [InlineData("lost-flow", 93)]
    [InlineData("power-nobody", 93)]
    [InlineData("permits", 93)]
    [InlineData("splash", 93)]
    [InlineData("weak-wash", 93)]
    [InlineData("hot-lime", 93)]
    [InlineData("long-night", 93)]
    public void A_bad_shift_is_a_page_or_little_more(string name, int lines)
    {
        var (line, note) = Drawn(name);
        using var _ = line;

        Assert.InRange(Notes.Write(note, NoteFormat.Text).TrimEnd('\n').Split('\n').Length, 1, lines);
    }

    private static (BadLine Line, HandoverNote Note) Drawn(string name)
    {
        var shift = All.Single(s => s.Name == name);
        var line = shift.Shift();
        return (line, HandoverNote.Of(line.Desk, SmallLine.At(shift.Of)) with { Head = new string('0', 64) });
    }

    private static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
