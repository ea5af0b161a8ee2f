using Logbook.Handover;
using Logbook.Handover.Tests;

namespace Logbook.Notes.Tests;

/// <summary>What is planted in the troubled night, looked for on the first printed page.</summary>
public class PageOneTests
{
    /// <summary>A4 has 93 lines at eight an inch.</summary>
    private const int Page = 93;

    private static readonly string[] Facts =
    [
        "Counted 1 by the attendant at 20:04",              // somebody inside
        "count unknown, treat as inside",                    // and for how long nobody counted
        "Lime mud pump, DO NOT START",                       // locked
        "low-flow lime trip bridged",                        // defeated, with what is done instead
        "instead liquor flow by hand each half hour",
        "in acid since 23:04",                               // acid
        "Eyewash at the slaker: out",                        // safety equipment
        "Slaker temperature 103.4 degC",                     // urgent, over
        "hose instead of the flushing line; until 23 Nov 19:00, PAST",
        "first 112.1 degC, put right to 102.1 degC",         // corrected
        "rising 2.5 % an hour",                              // moving
        "Line round 23:00 to 01:00 (3), 05:00: no reading in the window",
        "SL-L1: instrument faulty",                          // not taken
        "tighten the guard bolt",                            // still open
        "permit ends, lime mud tank",                        // coming
        "bowl may climb when the lime goes back up",         // in words
    ];

    [Fact]
    public void Every_planted_fact_is_on_page_one_and_what_can_hurt_stands_first()
    {
        using var line = TroubledNight.Write();
        var text = Notes.Write(HandoverNote.Of(line.Desk, line.Desk.Now), NoteFormat.Text);

        var page = Words(string.Join('\n', text.Split('\n').Take(Page)));

        Assert.All(Facts, fact => Assert.Contains(fact, page, StringComparison.Ordinal));
        Assert.All(Facts[..7], fact => Assert.True(page.IndexOf(fact, StringComparison.Ordinal) < page.IndexOf("NOT NORMAL", StringComparison.Ordinal), fact));
    }

    /// <summary>However the page broke its lines.</summary>
    private static string Words(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
