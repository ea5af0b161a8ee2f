using System.Globalization;
using Logbook.Demo.Instruments;
using Logbook.Demo.Line;
using Logbook.Plant;

namespace Logbook.Demo.Tests;

public sealed class ReaderTests
{
    private static readonly DateTimeOffset _from = new(2026, 11, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly LineHistory _history = new(_from, _from.AddDays(3), [], 12, new Chance(3));

    private static readonly Site _site = DemoRun.Site(1);

    private static Reader With(params InstrumentFault[] faults) => new(_history, faults, new Chance(3));

    [Fact]
    public void The_simulator_knows_every_read_point_of_the_starter_site() =>
        Assert.Empty(_site.Points.Where(p => p.Kind == PointKind.Read && !Reader.Knows(p)).Select(p => p.Tag));

    [Fact]
    public void Every_read_point_of_the_starter_site_is_asked_for_by_a_round()
    {
        var asked = _site.Rounds.SelectMany(r => r.Points).ToHashSet(StringComparer.OrdinalIgnoreCase);

        Assert.Empty(_site.Points.Where(p => p.Kind == PointKind.Read && !asked.Contains(p.Tag)).Select(p => p.Tag));
    }

    [Fact]
    public void A_point_that_the_simulator_does_not_know_is_an_error()
    {
        var strange = _site.FindPoint("SL-T1")! with { Tag = "XX-1" };

        Assert.False(Reader.Knows(strange));
        Assert.Throws<InvalidOperationException>(() => With().Read(strange, _from));
    }

    [Fact]
    public void Every_read_point_has_a_value_inside_its_possible_range_at_every_hour()
    {
        var reader = With();
        foreach (var at in Enumerable.Range(0, 72).Select(h => _from.AddHours(h)))
        {
            foreach (var point in _site.Points.Where(p => p.Kind == PointKind.Read))
            {
                var text = reader.Read(point, at);
                var value = double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
                Assert.InRange(value, point.Lowest ?? double.MinValue, point.Highest ?? double.MaxValue);
                Assert.True(point.Choices.Count == 0 || point.Choices.Any(c => c.Digit == value), $"{point.Tag} has no choice {text}");
            }
        }
    }

    [Fact]
    public void Readings_show_the_digits_of_their_point()
    {
        var text = With().Read(_site.FindPoint("WL-B")!, _from);

        Assert.Matches(@"^\d+\.\d[05]$", text);
    }

    [Fact]
    public void A_stuck_transmitter_shows_one_value_until_it_is_freed()
    {
        var point = _site.FindPoint("RG-D")!;
        var reader = With(new InstrumentFault("RG-D", _from.AddHours(2), _from.AddHours(12), FaultKind.Stuck));

        var texts = Enumerable.Range(0, 20).Select(h => reader.Read(point, _from.AddHours(h))).ToList();

        Assert.Single(texts.Skip(2).Take(10).Distinct(StringComparer.Ordinal));
        Assert.True(texts.Skip(12).Distinct(StringComparer.Ordinal).Count() > 4);
    }

    [Fact]
    public void Readings_scatter_around_the_truth_as_their_uncertainty_says()
    {
        var point = _site.FindPoint("SL-T1")!;
        var reader = With();

        var errors = Enumerable.Range(0, 800).Select(i => _from.AddMinutes(5 * i))
            .Select(at => double.Parse(reader.Read(point, at), CultureInfo.InvariantCulture) - reader.Truth(point, at)).ToList();
        var mean = errors.Average();
        var spread = Math.Sqrt(errors.Average(e => (e - mean) * (e - mean)));

        Assert.InRange(spread, 0.6 * 0.3, 1.0 * 0.3);
        Assert.InRange(Math.Abs(mean), 0, 0.3);
    }
}
