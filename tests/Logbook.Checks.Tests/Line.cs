using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;
using Microsoft.Extensions.Time.Testing;

namespace Logbook.Checks.Tests;

/// <summary>The small site under a clock that tests turn, with the shortest words for what they do.</summary>
internal sealed class Line
{
    public Line(SiteFiles? files = null, IReadOnlyList<LoadedCalculation>? calculations = null)
    {
        Desk = Some.Desk(Clock, Journal, files, calculations);
    }

    public FakeTimeProvider Clock { get; } = new(Some.Morning);

    public InMemoryJournal Journal { get; } = new();

    public Desk Desk { get; }

    /// <summary>Saves readings that must be accepted.</summary>
    public Entry Save(params string[] readings) => Assert.IsType<Entry>(Record(readings).Body);

    public JournalRecord Record(params string[] readings)
    {
        var written = RecordEntry.Run(Desk, Some.Entry(readings));
        Assert.Empty(written.Mistakes);
        return written.Record!;
    }

    /// <summary>The mistakes for which nothing was saved.</summary>
    public IReadOnlyList<Mistake> Refused(EntryRequest request)
    {
        var before = Journal.Head;
        var written = RecordEntry.Run(Desk, request);
        Assert.Null(written.Record);
        Assert.NotEmpty(written.Mistakes);
        Assert.Equal(before, Journal.Head);
        return written.Mistakes;
    }

    public Mistake RefusedOnce(params string[] readings) => Assert.Single(Refused(Some.Entry(readings)));

    public void Later(TimeSpan time) => Clock.Advance(time);

    public void Later(int hours) => Later(TimeSpan.FromHours(hours));
}
