using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>An upset with the records that tell of it.</summary>
/// <param name="Ended">Null while it lasts.</param>
internal sealed record UpsetThen(JournalRecord Begun, JournalRecord? Ended)
{
    public DateTimeOffset Began => ((UpsetDeclared)Begun.Body).Began;

    public DateTimeOffset? End => ((UpsetDeclared?)Ended?.Body)?.Ended;

    /// <summary>What was said of it, at its begin and at its end; what one of them has whole in it is said once.</summary>
    public IReadOnlyList<string> Words
    {
        get
        {
            string[] said = [.. new[] { Begun, Ended }.Select(r => ((UpsetDeclared?)r?.Body)?.Why).OfType<string>().Select(w => w.Trim().TrimEnd('.')).Where(w => w.Length > 0)];
            return said is [var begin, var end]
                ? begin.Contains(end, StringComparison.OrdinalIgnoreCase) ? [begin] : end.Contains(begin, StringComparison.OrdinalIgnoreCase) ? [end] : said
                : said;
        }
    }

    /// <summary>The upsets that ended in <paramref name="records"/>, and the one that lasted at the stretch's end.</summary>
    /// <param name="then">The state at the stretch's end.</param>
    public static IReadOnlyList<UpsetThen> Of(Desk desk, State then, IEnumerable<JournalRecord> records)
    {
        var ended = records.Where(r => r.Body is UpsetDeclared { Ended: not null }).Select(r => new UpsetThen(Begin(desk, r), r)).ToList();
        return then.Upset is { } open && ended.TrueForAll(u => u.Begun.Seq != open.Seq) ? [.. ended, new UpsetThen(desk.Store.Read(open.Seq).First(), null)] : ended;
    }

    /// <summary>The record that declared it: it has the time of the begin. The end's own where none is found.</summary>
    private static JournalRecord Begin(Desk desk, JournalRecord ended)
    {
        var began = ((UpsetDeclared)ended.Body).Began;
        return desk.Store.Between(began, began.AddMilliseconds(1)).LastOrDefault(r => r.Seq < ended.Seq && r.Body is UpsetDeclared { Ended: null } begin && begin.Began == began) ?? ended;
    }
}
