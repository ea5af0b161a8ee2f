using Logbook.Demo.Line;

namespace Logbook.Demo.Tests;

/// <summary>Two days of a wandering, disturbed line: what goes in comes out or is still there. Masses by the IUPAC atomic weights.</summary>
public sealed class LineBalanceTests
{
    private const double Minute = 1 / 60.0;

    private static readonly DateTimeOffset _start = new(2026, 11, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly IReadOnlyList<Moment> _moments = Run(
    [
        new PlantChange(Lever.LimeFactor, _start.AddHours(5), _start.AddHours(5.5), 0.5),
        new PlantChange(Lever.Flow, _start.AddHours(12), _start.AddHours(20), -60),
        new PlantChange(Lever.Strength, _start.AddHours(24), _start.AddHours(40), 8),
    ]);

    private static List<Moment> Run(IReadOnlyList<PlantChange> changes, int hours = 48)
    {
        var model = new LineModel(changes, altitudeM: 12, new Chance(5));
        return [.. Enumerable.Range(1, hours * 60).Select(minute => model.Step(_start.AddMinutes(minute)))];
    }

    /// <summary>kmol Na.</summary>
    private static double Sodium(Liquor liquor) => liquor.NaOH + (2 * liquor.Na2S) + (2 * liquor.Na2CO3);

    private static double InHotTanks(Moment m, Func<Slurry, double> of) => (75 * of(m.Hot.Slaker)) + (225 * m.Hot.Causticizers.Sum(of));

    private static double Sum(Func<Moment, double> perHour) => _moments.Skip(1).Sum(perHour) * Minute;

    [Fact]
    public void Soda_from_green_liquor_leaves_as_white_liquor_weak_wash_and_mud_or_is_still_there()
    {
        var came = Sum(m => m.Green.Flow * Sodium(m.Green.Cooled.Liquor));
        var left = Sum(m => (m.Mud.White.Flow * Sodium(m.Mud.White.Liquor)) + (m.Mud.ToDissolving * Sodium(m.Mud.Weak)) + Sodium(m.Mud.SodaToKiln));
        var kept = Kept(m => InHotTanks(m, s => Sodium(s.Liquor)) + Sodium(m.Mud.Soda));

        Assert.Equal(came, left + kept, tolerance: came * 1e-6);
    }

    [Fact]
    public void Available_lime_leaves_as_carbonate_or_free_lime_or_is_still_there()
    {
        var came = Sum(m => m.Green.Flow * m.Lime.Lime * m.Lime.Availability / Molar.CaO);
        var left = Sum(m => m.Hot.Flow * (m.Hot.Outflow.Lime + m.Hot.Outflow.Mud));
        var kept = Kept(m => InHotTanks(m, s => s.Lime + s.Mud));

        Assert.Equal(came, left + kept, tolerance: came * 1e-9);
    }

    [Fact]
    public void Mud_made_goes_to_the_kiln_or_is_still_in_the_tank()
    {
        var made = Sum(m => m.Mud.Made);

        Assert.Equal(made, Sum(m => m.Mud.KilnFeed) + Kept(m => m.Mud.Solids), tolerance: made * 1e-9);
    }

    [Fact]
    public void A_step_of_the_dose_reaches_the_white_liquor_two_to_three_hours_later()
    {
        var quiet = Run([], 60);
        var stepped = Run([new PlantChange(Lever.LimeFactor, _start.AddHours(48), _start.AddHours(60), -0.05)], 60);
        var answer = quiet.Zip(stepped, (q, s) => q.Hot.Outflow.Liquor.Causticity - s.Hot.Outflow.Liquor.Causticity).ToList();

        var most = answer.Skip(48 * 60).Max();
        var half = (answer.FindIndex(48 * 60, a => a > most / 2) / 60.0) - 48;

        Assert.InRange(half, 1.75, 3);
        Assert.Equal(0, answer.Take(48 * 60 - 1).Max(Math.Abs), tolerance: 1e-12);
    }

    private static double Kept(Func<Moment, double> stock) => stock(_moments[^1]) - stock(_moments[0]);
}
