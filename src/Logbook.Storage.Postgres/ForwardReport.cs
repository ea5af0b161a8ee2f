using System.Globalization;
using Logbook.Journal;

namespace Logbook.Storage.Postgres;

/// <summary>How a line's journal and what the server holds of it stand to each other.</summary>
public enum Agreement
{
    /// <summary>There is no record yet.</summary>
    Empty,

    /// <summary>The server holds every record.</summary>
    Whole,

    /// <summary>The server holds the beginning; the rest waits in the journal.</summary>
    Behind,

    /// <summary>The journal is a beginning of what the server holds: records are missing here.</summary>
    Ahead,

    /// <summary>They part at a record. Nothing is sent: which one is right is for people to find out.</summary>
    Differs,
}

/// <summary>What came of forwarding, or of a look at it.</summary>
/// <param name="Line">The journal's end.</param>
/// <param name="There">The end of what the server holds.</param>
/// <param name="Sent">Records sent by this run.</param>
/// <param name="SetBack">How many records the server had acknowledged before and did not hold any more when this run began.</param>
/// <param name="ClockAhead">How far this terminal's clock is before the server's.</param>
/// <param name="FirstDifference">The first record in which they differ.</param>
public sealed record ForwardReport(string Chain, Agreement Agreement, Head Line, Head There, long Sent, long SetBack, TimeSpan ClockAhead, Difference? FirstDifference)
{
    // Time servers keep clocks within a second; this much is worth a word. Records keep the order of their numbers whatever clocks say.
    private static readonly TimeSpan ClockGrace = TimeSpan.FromMinutes(1);

    public long Behind => Math.Max(0, Line.Seq - There.Seq);

    /// <summary>What a person reads, a line each.</summary>
    public IReadOnlyList<string> Words => [.. Lines()];

    /// <summary>How the two stand, in one line.</summary>
    public string Verdict => Agreement switch
    {
        Agreement.Empty => "the journal has no record yet: nothing to forward",
        Agreement.Whole => $"{Chain}: the server holds all {Count(There.Seq)}, head {There.Hash}{(Sent > 0 ? $"; {Sent.ToString(CultureInfo.InvariantCulture)} sent now" : "")}",
        Agreement.Behind => $"{Chain}: the server holds {Count(There.Seq)}; {Behind.ToString(CultureInfo.InvariantCulture)} wait here, and nothing of them is lost",
        Agreement.Ahead => $"REFUSED: the server holds {Count(There.Seq)} of {Chain}, this journal ends at {Line.Seq} and agrees up to there: it is an older copy. Nothing was sent. Write nothing here before the missing {There.Seq - Line.Seq} are back: logbook export --server --line {Chain} --format jsonl --out F, then logbook restore F where there is no journal yet",
        _ => $"REFUSED: {Chain} here and on the server part at record {FirstDifference!.Seq}. {FirstDifference.Words}. Nothing was sent, nothing was merged: compare the heads of printed notes with both (logbook verify --head)",
    };

    private IEnumerable<string> Lines()
    {
        if (SetBack > 0)
            yield return $"the server had acknowledged {Count(SetBack)} more of {Chain} than it holds now: it was set back to an older copy; they are here, and are sent again";
        yield return Verdict;
        if (ClockAhead.Duration() > ClockGrace)
            yield return string.Create(CultureInfo.InvariantCulture, $"this terminal's clock is {Math.Round(ClockAhead.Duration().TotalMinutes)} minutes {(ClockAhead > TimeSpan.Zero ? "before" : "behind")} the server's: set one of them right; order goes by number and is not touched");
    }

    private static string Count(long records) => records == 1 ? "1 record" : $"{records.ToString(CultureInfo.InvariantCulture)} records";
}

/// <summary>The first record in which two journals of one name differ.</summary>
/// <param name="TypedThere">When the server's was typed.</param>
/// <param name="ArrivedThere">When it arrived, by the server's clock.</param>
public sealed record Difference(JournalRecord Here, string HashThere, DateTimeOffset TypedThere, DateTimeOffset ArrivedThere)
{
    public long Seq => Here.Seq;

    public string Words => string.Create(
        CultureInfo.InvariantCulture,
        $"Here it is {Here.Kind} by {Here.By}, typed {Utc(Here.Entered)}, hash {Here.Hash[..12]}; there one typed {Utc(TypedThere)} that arrived {Utc(ArrivedThere)}, hash {HashThere[..12]}");

    private static string Utc(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);
}
