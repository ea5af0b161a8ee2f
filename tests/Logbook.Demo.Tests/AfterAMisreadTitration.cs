using System.Globalization;
using Logbook.Checks;
using Logbook.Checks.Examining;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;
using Microsoft.Extensions.Time.Testing;

namespace Logbook.Demo.Tests;

/// <summary>
/// A burette is misread, the second titration that the program asks for is sound, and in a later round an instrument is off: what
/// was found first hides nothing of it, and is not laid to what is sound. Half a day before anything of the demo's last night.
/// </summary>
public sealed class AfterAMisreadTitration
{
    private const double Misread = 1.5;

    [Theory, InlineData(2), InlineData(3)]
    public void The_second_titration_is_told_nothing(int seed)
    {
        var mill = new Mill(seed);

        mill.MisreadAndTitrateAgain();

        Assert.Equal("WL-B", Assert.Single(mill.Doubts(0), f => f.Level == Level.Watch).Point);
        Assert.Empty(mill.Doubts(1));
    }

    [Theory, InlineData(2), InlineData(3)]
    public void A_sound_shift_after_it_is_told_nothing(int seed)
    {
        var mill = new Mill(seed);
        mill.MisreadAndTitrateAgain();

        mill.Rounds(TimeSpan.FromHours(6), _ => 0);

        Assert.DoesNotContain(mill.Doubts(2, all: true), f => f.Level == Level.Watch);
    }

    [Theory]
    [InlineData(2, "LM-F1", 0.1, 0), InlineData(3, "LM-F1", 0.1, 0)]
    [InlineData(2, "LM-N1", 0.1, 0), InlineData(3, "LM-N1", 0.1, 0)]
    [InlineData(2, "SL-T1", 0, -3), InlineData(3, "SL-T1", 0, -3)]
    [InlineData(2, "SL-F1", -0.1, 0), InlineData(3, "SL-F1", -0.1, 0)]
    public void An_instrument_that_is_off_in_a_later_round_is_named_with_about_its_size(int seed, string tag, double share, double by)
    {
        var mill = new Mill(seed);
        mill.MisreadAndTitrateAgain();
        double Wrong(double value) => (share * value) + by;

        mill.Rounds(TimeSpan.FromHours(5), r => r.Point == tag ? Wrong(r.Value!.Value) : 0);

        var finding = Assert.Single(mill.Doubts(2, all: true).Where(f => f.Level == Level.Watch && f.Code != "examine.group").DistinctBy(f => f.Point, StringComparer.Ordinal));
        Assert.Equal(tag, finding.Point);
        var size = double.Parse(finding.Evidence.Single(e => e.StartsWith(tag + " off by ", StringComparison.Ordinal)).Split(' ')[3], CultureInfo.InvariantCulture);
        var planted = Wrong(mill.Usual(tag));
        Assert.InRange(size / planted, 0.5, 1.6);
        // It goes on, and so does the doubt, whatever else an entry is told; once it is right the doubt goes.
        Assert.All(mill.Reading(2, tag).SkipWhile(e => !Doubted(e, tag)), e => Assert.True(Doubted(e, tag), $"record {e.Readings[0].At}: no doubt of {tag}"));
        mill.Rounds(TimeSpan.FromHours(8), _ => 0);
        Assert.False(Doubted(mill.Reading(2, tag).Last(), tag));
    }

    private static bool Doubted(Entry entry, string tag) => entry.Findings.Any(f => f.Point == tag && f.Level == Level.Watch && f.Code.StartsWith("examine.", StringComparison.Ordinal));

    /// <summary>The demo's line from half a day before its last night on, at a terminal of its own.</summary>
    private sealed class Mill
    {
        private readonly DemoRun _full;
        private readonly DateTimeOffset _cut;
        private readonly FakeTimeProvider _clock;
        private readonly Desk _desk;
        private readonly List<Entry> _saved = [];

        public Mill(int seed)
        {
            _full = DemoRun.Long(9, seed);
            _cut = _full.Until.AddHours(-30);
            _clock = new FakeTimeProvider(_cut);
            var store = new InMemoryJournal();
            foreach (var r in _full.Records.Where(r => r.Entered <= _cut))
            {
                store.Append(new RecordDraft(r.Body, r.Chain, r.At, r.Entered, r.Shift, r.By, r.Terminal));
            }

            _desk = new Desk(store, _full.Desk.Files, _full.Desk.Calculations, new InlineGuard(), _clock, "demo:test");
            _desk.Follow();
        }

        public double Usual(string tag) => _full.Records.Last(r => r.Entered <= _cut && r.Body is Entry e && e.Readings.Any(x => x.Point == tag)).Body is Entry entry
            ? entry.Readings.First(r => r.Point == tag).Value!.Value : double.NaN;

        /// <summary>The last white liquor titration once more with end point B misread, and twenty minutes later as it was.</summary>
        public void MisreadAndTitrateAgain()
        {
            Save([("WL-A", Usual("WL-A")), ("WL-B", Usual("WL-B") + Misread), ("WL-C", Usual("WL-C"))]);
            _clock.Advance(TimeSpan.FromMinutes(20));
            Save([("WL-A", Usual("WL-A")), ("WL-B", Usual("WL-B")), ("WL-C", Usual("WL-C"))]);
        }

        /// <summary>What was typed in the demo in the hours after, each reading off by so much.</summary>
        public void Rounds(TimeSpan time, Func<Reading, double> off)
        {
            foreach (var r in _full.Records.Where(r => r.Body is Entry && r.At > _clock.GetUtcNow() && r.At <= _cut + time).OrderBy(r => r.At).ToList())
            {
                _clock.SetUtcNow(r.At);
                Save([.. ((Entry)r.Body).Readings.Where(x => x.Value is not null && !_desk.Site.FindPoint(x.Point)!.Choices.Any()).Select(x => (x.Point, x.Value!.Value + off(x)))]);
            }
        }

        /// <summary>The saved entries that read the point.</summary>
        public IEnumerable<Entry> Reading(int from, string tag) => _saved.Skip(from).Where(e => e.Readings.Any(r => r.Point == tag));

        public IEnumerable<Finding> Doubts(int from, bool all = false) =>
            (all ? _saved.Skip(from) : _saved.Skip(from).Take(1)).SelectMany(e => e.Findings).Where(f => f.Code.StartsWith("examine.", StringComparison.Ordinal));

        private void Save(IReadOnlyList<(string Tag, double Value)> readings)
        {
            TypedReading Typed((string Tag, double Value) r) => new(r.Tag, r.Value.ToString("0.###", CultureInfo.InvariantCulture), Place.Unknown) { Why = "read twice" };
            if (readings.Count > 0)
            {
                var written = RecordEntry.Run(_desk, new EntryRequest(_desk.Site.People[0].Code, [.. readings.Select(Typed)]));
                _saved.Add(Assert.IsType<Entry>((written.Record ?? throw new InvalidOperationException(string.Join("; ", written.Mistakes))).Body));
            }
        }
    }
}
