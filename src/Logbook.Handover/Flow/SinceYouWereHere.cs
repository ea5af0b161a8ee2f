using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What changed while a person was away: states, items, corrections, remarks, urgent findings. Readings by themselves stand elsewhere.</summary>
public static class SinceYouWereHere
{
    /// <summary>When the person was last here before this time; null when the journal knows of no time before.</summary>
    public static DateTimeOffset? LastHere(Desk desk, string by)
    {
        var standing = desk.State.People.GetValueOrDefault(by);
        var here = standing?.Last is { } last && desk.Now - last.At <= Standing.Away;
        return (here ? standing!.Before : standing?.Last)?.At;
    }

    /// <summary>The changes in order, each in one line.</summary>
    public static IReadOnlyList<LogLine> Lines(Desk desk, string by)
    {
        var from = LastHere(desk, by) ?? desk.Now - JournalBack;
        return [.. desk.Store.Between(from, desk.Now.AddMinutes(1)).Where(r => Tells(r.Body)).Select(r => LogLine.Of(desk, r))];
    }

    // Somebody whom the journal does not know reads a week back. Judgement.
    private static readonly TimeSpan JournalBack = TimeSpan.FromDays(7);

    internal static NoteSection Section(Desk desk, string by)
    {
        var since = LastHere(desk, by);
        return NoteSection.Of("since-here", "SINCE YOU WERE HERE", Lines(desk, by).Select(l => new NoteLine(
            Say.Time(desk.Site, l.At, desk.Now), $"{l.Words}. {Say.Person(desk.Site, l.By)} {Say.Ref(l.Seq)}"))) with
        {
            Beside = since is { } at ? $"last here {Say.Day(desk.Site, at)}" : "nothing recorded of an earlier time; the last seven days",
        };
    }

    private static bool Tells(RecordBody body) => body switch
    {
        Entry entry => entry.Findings.Any(f => f.Level == Level.Urgent),
        HandoverRefused or HandoverRelief or HandoverAccepted { Unattended: not null } => true,
        _ => !SincePrepared.IsStep(body),
    };
}
