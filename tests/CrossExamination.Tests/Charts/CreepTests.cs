using CrossExamination.Tests.Plants;
using Logbook.Checks.Charts;

namespace CrossExamination.Tests.Charts;

/// <summary>
/// A slow drift of one reading on simulated lines whose processes wander by themselves, looked for once a shift. The seeds are
/// others than those on which the limit was set.
/// </summary>
public sealed class CreepTests
{
    private const int Learned = 14 * 24;
    private const int Weeks = 8;
    private const int Week = 7 * 24;

    public static TheoryData<string> Plants => ["easy", "hard, hourly", "hard, every two hours"];

    [Theory]
    [MemberData(nameof(Plants))]
    public void Of_twenty_points_about_one_a_week_at_most_is_told_without_a_drift(string plant)
    {
        var (told, lines) = (0, 3);
        for (var seed = 0; seed < lines; seed++)
        {
            var points = Points(Make(plant, 900 + seed), Learned);
            var going = new bool[points.Readings.Length];
            while (points.Hour < Learned + (Weeks * Week))
            {
                foreach (var i in points.Next(_ => 0))
                {
                    var stands = points.Stands(i, going[i]);
                    told += stands && !going[i] ? 1 : 0;
                    going[i] = stands;
                }
            }
        }

        Assert.InRange(told / (double)(lines * Weeks), 0, 1.2);
    }

    [Theory]
    [MemberData(nameof(Plants))]
    public void A_drift_of_four_uncertainties_a_day_is_mostly_told_within_a_week(string plant)
    {
        var (found, all) = (0, 0);
        for (var seed = 950; seed < 954; seed++)
        {
            var history = Points(Make(plant, seed), Learned);
            for (var i = 0; i < history.Readings.Length; i++, all++)
            {
                var (line, drifting, begun) = (history.Branch(60 + i), i, history.Hour);
                var told = false;
                while (!told && line.Hour < begun + Week)
                {
                    told = line.Next(p => p == drifting ? (line.Hour - begun) / 6.0 : 0).Contains(drifting) && line.Stands(drifting, false);
                }

                found += told ? 1 : 0;
            }
        }

        Assert.InRange(found / (double)all, 0.65, 1);
    }

    [Fact]
    public void Too_little_history_says_nothing()
    {
        double[] hours = [.. Enumerable.Range(0, 100).Select(i => (double)i)];

        Assert.Null(Creep.Of(hours, [.. hours.Select(h => h % 3)], 1));
        Assert.Null(Creep.Of([0], [1], 1));
    }

    private static Plant Make(string plant, int seed) => plant switch
    {
        "easy" => new EasyPlant(seed),
        "hard, hourly" => new HardPlant(seed, 1),
        _ => new HardPlant(seed),
    };

    private static Looked Points(Plant plant, int hours)
    {
        var points = new Looked(plant, [.. Plant.Declared.Select(_ => new List<(double, double)>())], new int[Plant.Declared.Length]);
        while (points.Hour < hours)
        {
            _ = points.Next(_ => 0).ToList();
        }

        return points;
    }

    /// <summary>Every point's readings, and the shift in which it was looked at last.</summary>
    private sealed record Looked(Plant Plant, List<(double Hour, double Value)>[] Readings, int[] Shift)
    {
        public int Hour => Plant.Hour;

        public Looked Branch(int seed) => new(Plant.Branch(seed), [.. Readings.Select(r => r.ToList())], [.. Shift]);

        /// <summary>The next round; gives the points that are read the first time in their shift.</summary>
        /// <param name="off">How many standard uncertainties a reading is off.</param>
        public IReadOnlyList<int> Next(Func<int, double> off)
        {
            var values = Plant.Next();
            var first = new List<int>();
            for (var i = 0; i < values.Length; i++)
            {
                if (double.IsNaN(values[i]))
                {
                    continue;
                }

                Readings[i].Add((Hour, values[i] + (off(i) * Plant.Declared[i])));
                if (Hour / 12 != Shift[i])
                {
                    Shift[i] = Hour / 12;
                    first.Add(i);
                }
            }

            return first;
        }

        public bool Stands(int i, bool going)
        {
            var known = Readings[i].FindAll(r => r.Hour > Hour - Learned);
            return Creep.Of([.. known.Select(r => r.Hour)], [.. known.Select(r => r.Value)], Plant.Declared[i] / 3)?.Stands(2 * Plant.Declared[i], going) == true;
        }
    }
}
