using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>
/// Where a correction took the newest value of a point back, the last one that stands is what is known of it: with its own time,
/// so that nothing looks newer than it is.
/// </summary>
internal static class LastThatStands
{
    // What is older than this says nothing of now. Judgement, no source.
    private static readonly TimeSpan Back = TimeSpan.FromDays(7);

    /// <summary>The state with such values; one that nothing was taken back in is returned as it is.</summary>
    public static State In(Desk desk, State state)
    {
        var gone = state.Latest.Values.Where(v => v.Value is null).ToList();
        return gone.Count == 0 ? state : state with { Latest = state.Latest.SetItems(gone.Select(v => KeyValuePair.Create(v.Point, Before(desk, state, v)))) };
    }

    private static SeriesValue Before(Desk desk, State state, SeriesValue gone) =>
        desk.Store.Series(gone.Point, gone.At - Back, gone.At.AddTicks(1), state.Head.Seq).LastOrDefault(v => v.Value is not null) ?? gone;
}
