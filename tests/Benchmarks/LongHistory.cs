using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Benchmarks;

/// <summary>
/// Rounds of forty readings, one each 21 minutes, on five routes over the starter site's points: five million readings are five
/// years, in which a point is read about once an hour. One reading in fifty was not taken.
/// </summary>
internal sealed class LongHistory
{
    public const int PerRound = 40;
    private const int Routes = 5;
    private static readonly TimeSpan Between = TimeSpan.FromMinutes(21);

    private readonly Random _chance = new(1);
    private readonly SiteFiles _files;
    private readonly Site _site;
    private readonly List<List<Point>> _routes;

    public LongHistory(SiteFiles files)
    {
        _files = files;
        _site = SiteReader.Read(files).Value!;
        var points = _site.Points.Where(p => p.Kind == PointKind.Read && p.Choices.Count == 0 && p.Lowest is not null).ToList();
        _routes = [.. Enumerable.Range(0, Routes).Select(r => Enumerable.Range(0, PerRound).Select(i => points[((r * points.Count / Routes) + i) % points.Count]).ToList())];
    }

    /// <summary>The time of the last round so far.</summary>
    public DateTimeOffset Now { get; private set; } = new(2021, 11, 1, 12, 0, 0, TimeSpan.Zero);

    public IEnumerable<Point> Points => _routes.SelectMany(r => r).Distinct();

    /// <summary>What an empty journal takes up first.</summary>
    public RecordDraft Beginning() => Draft(new SiteAdopted(_files.Texts, "first record of the journal"));

    /// <summary>The next round.</summary>
    public RecordDraft Round()
    {
        Now += Between;
        var route = _chance.Next(Routes);
        return Draft(new Entry { Round = string.Create(CultureInfo.InvariantCulture, $"route-{route}"), Readings = [.. _routes[route].Select(Read)] });
    }

    private RecordDraft Draft(RecordBody body)
    {
        var at = Calendar.ToSite(_site, Now);
        return new RecordDraft(body, _site.Id, at, at.AddSeconds(40), Calendar.ShiftAt(_site, at).Id, "op1", "bench:1");
    }

    private Reading Read(Point point, int place)
    {
        var at = Calendar.ToSite(_site, Now.AddSeconds(20 * (place - PerRound)));
        if (_chance.Next(50) == 0)
        {
            return new Reading { Point = point.Tag, Unit = point.Unit.Name, At = at, Why = "no time" };
        }

        var low = point.Limits.WatchLow ?? point.Lowest!.Value;
        var high = point.Limits.WatchHigh ?? point.Highest!.Value;
        var typed = (low + ((high - low) * _chance.NextDouble())).ToString("F" + point.Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return new Reading { Point = point.Tag, Typed = typed, Value = double.Parse(typed, CultureInfo.InvariantCulture), Unit = point.Unit.Name, At = at };
    }
}
