using Logbook.Plant;

namespace Logbook.Plant.Tests;

public sealed class CrewPatternTests
{
    private const string TwoShifts = "[[shift]]\ncode = \"D\"\nstarts = \"07:00\"\n[[shift]]\ncode = \"N\"\nstarts = \"19:00\"\n";

    private const string ThreeShifts =
        "[[shift]]\ncode = \"M\"\nstarts = \"07:00\"\n[[shift]]\ncode = \"A\"\nstarts = \"15:00\"\n[[shift]]\ncode = \"N\"\nstarts = \"23:00\"\n";

    private static Parsed<Site> Read(string shifts, string pattern, int offset, string names = "\"A\", \"B\", \"C\", \"D\"") =>
        StarterSite.WithCrews(shifts, $"[crews]\nnames = [{names}]\npattern = \"{pattern}\"\nanchor = 2026-01-01\noffset_days = {offset}\n");

    [Theory]
    // Rotas in common use: four crews, 42 hours a week on average (common practice, no source).
    [InlineData("DDNNoooo", 2, TwoShifts, 12)]
    [InlineData("DDDDooooNNNNoooo", 4, TwoShifts, 12)]
    [InlineData("NNNNooo DDDoNNN oooDDDD ooooooo", 7, TwoShifts, 12)]
    [InlineData("DDooDDDooDDooo NNooNNNooNNooo", 7, TwoShifts, 12)]
    [InlineData("MMAANNoo", 2, ThreeShifts, 8)]
    [InlineData("MMAANNN oo MMAAANN oo MMMAANN ooo", 7, ThreeShifts, 8)]
    public void A_rota_with_one_crew_on_each_shift_is_accepted(string pattern, int offset, string shifts, int hours)
    {
        var site = Read(shifts, pattern, offset);

        Assert.Equal("", string.Join("\n", site.Mistakes));
        var crews = site.Value!.Crews;
        for (var day = 0; day < 400; day++)
        {
            var date = new DateOnly(2025, 6, 1).AddDays(day);
            Assert.All(site.Value.Shifts, s => Assert.Single(crews.On(date, s.Code)));
        }

        Assert.Equal(42.0, crews.Pattern.Count(c => c != 'o') * hours * 7.0 / crews.Pattern.Length, 1e-9);
    }

    [Theory]
    [InlineData("DDNNoooo", 1, "on 2026-01-01 shift N has no crew")]
    [InlineData("DDNNoooo", 4, "on 2026-01-01 shift D has crews A and C")]
    [InlineData("DDNNooo", 2, "shift")]
    [InlineData("DDXXoooo", 2, "pattern has 'X'; one letter a day: D, N, or o for off")]
    public void A_rota_that_leaves_a_shift_or_fills_it_twice_is_refused(string pattern, int offset, string wrong)
    {
        var mistake = Assert.Single(Read(TwoShifts, pattern, offset).Mistakes);

        Assert.Contains(wrong, mistake.ToString(), StringComparison.Ordinal);
        Assert.Equal(new Place("site.toml", 21, 11), mistake.Where);
    }

    [Fact]
    public void Three_crews_cannot_fill_a_rota_of_four()
    {
        var site = Read(TwoShifts, "DDNNoooo", 2, "\"A\", \"B\", \"C\"");

        Assert.Contains(site.Mistakes, m => m.Wrong.Contains("has no crew", StringComparison.Ordinal));
    }
}
