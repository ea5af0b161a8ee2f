using Logbook.Checks.CrossExamination;
using Logbook.Journal;

namespace Logbook.Checks.Examining;

/// <summary>
/// The cross-examination at a desk. What it says of an entry follows from the journal alone: the fit in force and the entries of
/// the days before, in the order of their time. What is kept here only saves reading those days again.
/// </summary>
internal sealed class Examinations(IJournalStore store)
{
    /// <summary>So far back an entry still shapes what is expected.</summary>
    private static readonly TimeSpan Memory = TimeSpan.FromHours(72);

    /// <summary>What was taken since then may be evidence.</summary>
    private static readonly TimeSpan Evidence = TimeSpan.FromHours(12);

    private static readonly TimeSpan BetweenMarks = TimeSpan.FromMinutes(30);

    private const int Marks = 12;

    private (CalculationGraph Graph, SiteLine Line)? _line;
    private (long Seq, SiteLine Line, Fitted? Fitted)? _fit;
    private Kept? _kept;

    // Where to begin again when an entry comes late, the newest last: most come within the hour.
    private List<Mark> _marks = [];

    private sealed record Kept(Trail Trail, Standstill Standstill, long Followed, DateTimeOffset At);

    /// <summary>A trail with every entry up to a time.</summary>
    private sealed record Mark(Trail Trail, DateTimeOffset At);

    /// <summary>What of the site stands in relation to what.</summary>
    public SiteLine Line(CalculationGraph graph)
    {
        if (_line is not { } known || !ReferenceEquals(known.Graph, graph))
        {
            _line = known = (graph, SiteLine.Of(graph));
        }

        return known.Line;
    }

    /// <summary>What was learned of this line; null when nothing was, or of another line.</summary>
    public Fitted? Fit(Day day)
    {
        if (day.State.Fit is not { } seq)
        {
            return null;
        }

        var line = Line(day.Graph);
        if (_fit is not { } known || known.Seq != seq || !ReferenceEquals(known.Line, line))
        {
            _fit = known = (seq, line, store.Read(seq).First().Body is FitAdopted fit ? FitForm.Read(line, fit) : null);
        }

        return known.Fitted;
    }

    /// <summary>The entry judged, with those before it; null when nothing was learned, or it takes no part.</summary>
    public Trail? Of(Day day, Sheet sheet)
    {
        if (Fit(day) is not { } fitted || !sheet.Readings.Any(r => r.Value is not null && Line(day.Graph).PlaceOf(r.Point) is not null))
        {
            return null;
        }

        var (trail, standstill) = Before(day, fitted, sheet.At);
        var branch = trail.Branch();
        return branch.Next(sheet, standstill) is null ? null : branch;
    }

    private (Trail Trail, Standstill Standstill) Before(Day day, Fitted fitted, DateTimeOffset at)
    {
        if (day.Before != long.MaxValue)
        {
            return Built(day, fitted, at, at);
        }

        Follow(day, fitted);
        if (_kept is null)
        {
            var (trail, standstill) = Built(day, fitted, at, DateTimeOffset.MaxValue.AddDays(-2));
            _kept = new Kept(trail, standstill, day.State.Head.Seq, trail.Last.Count == 0 ? DateTimeOffset.MinValue : trail.Last[^1].Frame.Sheet.At);
        }

        // One that comes late is judged by what was taken before it, not after.
        return at >= _kept.At ? (_kept.Trail, _kept.Standstill) : Built(day, fitted, at, at);
    }

    /// <summary>Takes up what was written since; what stands out of order, or was put right, makes it begin anew.</summary>
    private void Follow(Day day, Fitted fitted)
    {
        if (_kept is null || !ReferenceEquals(_kept.Trail.Fitted, fitted) || _kept.Followed > day.State.Head.Seq)
        {
            (_kept, _marks) = (null, []);
            return;
        }

        var (followed, at) = (_kept.Followed, _kept.At);
        List<JournalRecord> fresh = followed == day.State.Head.Seq ? [] : [.. store.Read(followed + 1).TakeWhile(r => r.Seq <= day.State.Head.Seq)];
        _marks.RemoveAll(m => fresh.Exists(r => SpeaksFrom(r) <= m.At));
        if (OutOfOrder(fresh, at))
        {
            _kept = null;
            return;
        }

        foreach (var record in fresh)
        {
            _kept.Standstill.Take(record);
            if (record.Body is Entry entry)
            {
                Remember(_kept.Trail, at);
                _kept.Trail.Next(Sheet.Of(record, entry), _kept.Standstill, slopes: true);
                at = record.At;
            }

            followed = record.Seq;
        }

        _kept = _kept with { Followed = followed, At = at };
    }

    private static bool OutOfOrder(List<JournalRecord> fresh, DateTimeOffset at)
    {
        foreach (var record in fresh)
        {
            if (SpeaksFrom(record) < at)
            {
                return true;
            }

            at = record.Body is Entry ? record.At : at;
        }

        return false;
    }

    /// <summary>The first time of which a record changes what is known.</summary>
    private static DateTimeOffset SpeaksFrom(JournalRecord record) => record.Body switch
    {
        Entry => record.At,
        EquipmentStateChanged change => change.Since,
        UpsetDeclared upset => upset.Ended ?? upset.Began,
        Correction => DateTimeOffset.MinValue,
        _ => DateTimeOffset.MaxValue,
    };

    private void Remember(Trail trail, DateTimeOffset at)
    {
        if (_marks.Count == 0 || at - _marks[^1].At > BetweenMarks)
        {
            _marks = [.. _marks.TakeLast(Marks - 1), new Mark(trail.Branch(), at)];
        }
    }

    private (Trail Trail, Standstill Standstill) Built(Day day, Fitted fitted, DateTimeOffset at, DateTimeOffset to)
    {
        var stretch = Stretch.Of(store, day.State, at - Memory, to, day.Before);
        var mark = day.Before == long.MaxValue ? _marks.FindLast(m => m.At <= at) : null;
        var trail = mark?.Trail ?? new Trail(fitted, new Tape(Line(day.Graph), day.Graph, day.Guard));
        var sheets = stretch.Sheets.Where(s => mark is null || s.At > mark.At);
        return (trail.After(sheets, stretch.Standstill, slopes: sheet => sheet.At >= at - Evidence), stretch.Standstill);
    }
}
