using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// What people wrote of a thing that can hurt: of its record, or of its equipment since it is so. It stands in that line, where it
/// is read with it, and not among the remarks of the shift.
/// </summary>
internal static class RemarkedOn
{
    // What was written before that stands in the log. Judgement, no source.
    private static readonly TimeSpan Back = TimeSpan.FromDays(3);

    /// <summary>The lines of what can hurt, each with what was written of it.</summary>
    public static IReadOnlyList<HazardLine> Beside(Desk desk, Site site, State state, DateTimeOffset now, IReadOnlyList<HazardLine> hazards)
    {
        List<JournalRecord> remarks = hazards.Count == 0 ? [] : [.. desk.Store.Between(Later(now - Back, hazards.Min(h => h.Since)), now.AddTicks(1)).Where(r => r.Body is Remark && !InjuryWords.TellsOfInjury(r))];
        var back = remarks.Where(r => IsTakingBack((Remark)r.Body)).SelectMany(r => new[] { r.Seq, ((Remark)r.Body).Related!.Value }).ToHashSet();
        remarks.RemoveAll(r => back.Contains(r.Seq));
        return [.. hazards.Select(h => With(site, now, h, remarks.FindAll(r => IsOf(state, h, r))))];
    }

    /// <summary>A remark about another one that says so: both stay in the log, and neither in a line of what can hurt.</summary>
    private static bool IsTakingBack(Remark remark) => remark.Related is not null && remark.Text.TrimStart().StartsWith("taken back", StringComparison.OrdinalIgnoreCase);

    private static DateTimeOffset Later(DateTimeOffset one, DateTimeOffset other) => one > other ? one : other;

    private static HazardLine With(Site site, DateTimeOffset now, HazardLine hazard, List<JournalRecord> remarks)
    {
        var words = string.Concat(remarks.Select(r => $" Written {Say.Time(site, r.At, now)}, {Say.Person(site, r.By)}: {Say.Sentence(((Remark)r.Body).Text)} {Say.Ref(r.Seq)}"));
        return hazard with { Text = hazard.Text + words, Brief = hazard.Brief + words, OnPage = hazard.OnPage + words, Remarks = [.. remarks.Select(r => r.Seq)] };
    }

    private static bool IsOf(State state, HazardLine hazard, JournalRecord record) => record.Body is Remark remark
        && (remark.Related == hazard.Seq || (remark.On is { } on && Handed.Same(on, On(state, hazard)) && record.At >= hazard.Since));

    /// <summary>The equipment that is in acid, locked or entered. A trip or an eyewash only lies at its place: what is written of that place is not of the thing.</summary>
    private static string? On(State state, HazardLine hazard) => hazard.Word is "defeated" or "out" ? null
        : state.Carried.Find(i => i.Id == hazard.Seq)?.On ?? state.Equipment.Values.FirstOrDefault(e => e.Seq == hazard.Seq)?.Equipment;
}
