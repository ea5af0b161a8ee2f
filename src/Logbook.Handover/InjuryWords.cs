using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>How the log knows that somebody was hurt, beside an item of that kind: by words. Whoever typed the words alone must not have hidden it.</summary>
public static class InjuryWords
{
    /// <summary>First aid for what this line holds, as the cautions have it.</summary>
    public const string FirstAid = "First aid for alkali or acid: water only, at once, and on until medical help takes over; the site's procedure rules.";

    // Beginnings, so that "injured", "injury" and "scalded" are found. A line too many under what can hurt is read and done with.
    private static readonly string[] Words = ["injur", "hurt", "scald", "splashed"];

    /// <summary>True when words tell of an injury.</summary>
    public static bool Tell(string? words) => words is not null && Words.Any(word => words.Contains(word, StringComparison.OrdinalIgnoreCase));

    /// <summary>What a record that tells of an injury says, as a sentence.</summary>
    internal static string Said(Desk desk, JournalRecord told) => Say.Sentence(told.Body switch
    {
        HandoverRelief relief => relief.Words,
        Entry entry => entry.Remark!,
        _ => LogLine.Of(desk, told).Words,
    });

    /// <summary>True when somebody was recorded as hurt by then: later words may speak of the same.</summary>
    internal static bool MaySpeakOf(State state, IEnumerable<JournalRecord> records, JournalRecord told) =>
        state.Carried.Exists(i => i.ItemKind == "injury" && i.Id < told.Seq) || records.Any(r => r.Body is Carry { ItemKind: "injury" } && r.Seq < told.Seq);

    /// <summary>An emergency relief because somebody is hurt tells of an injury, whatever else is written of it; so does what was remarked.</summary>
    public static bool TellsOfInjury(JournalRecord record) => record.Body switch
    {
        HandoverRelief { Mode: "emergency" } relief => Tell(relief.Words),
        Remark remark => Tell(remark.Text),
        Entry entry => Tell(entry.Remark),
        _ => false,
    };
}
