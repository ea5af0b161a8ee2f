namespace Logbook.Demo.Line;

/// <summary>What really happened on the line, every five minutes.</summary>
internal sealed class LineHistory
{
    private const int EveryMinutes = 5;

    /// <summary>Run before the history begins, so that tanks and mud have found their balance.</summary>
    private static readonly TimeSpan _settling = TimeSpan.FromHours(36);

    private readonly List<Moment> _moments = [];

    public LineHistory(DateTimeOffset from, DateTimeOffset to, IEnumerable<PlantChange> changes, double altitudeM, Chance chance)
    {
        var model = new LineModel(changes, altitudeM, chance);
        var at = from - _settling;
        for (var minute = 0; at <= to; minute++, at += TimeSpan.FromMinutes(1))
        {
            var moment = model.Step(at);
            if (at >= from && minute % EveryMinutes == 0)
            {
                _moments.Add(moment);
            }
        }
    }

    public IReadOnlyList<Moment> Moments => _moments;

    /// <summary>The newest moment that is not after <paramref name="at"/>; the first when there is none.</summary>
    public Moment At(DateTimeOffset at)
    {
        var index = (int)((at - _moments[0].At).TotalMinutes / EveryMinutes);
        return _moments[Math.Clamp(index, 0, _moments.Count - 1)];
    }
}
