using Logbook.Plugins.Laboratory;

namespace Logbook.Plugins.Tests;

public sealed class OtherLaboratoryTests
{
    // Computed from IUPAC atomic weights: 52.99377 g of soda ash to the equivalent.
    [Theory]
    [InlineData(1.3248, 50, 0.49998)]
    [InlineData(2.6497, 50, 1.00000)]
    public void Soda_ash_gives_the_acids_strength(double mass, double volume, double expected) =>
        Assert.Equal(expected, Trial.Value(new AcidStrength(), "acid", ("soda-ash", mass), ("acid-volume", volume)), 4);

    [Fact]
    public void An_acid_off_its_usual_strength_is_explained_two_ways()
    {
        Assert.Contains(Trial.Values(new AcidStrength(), ("soda-ash", 1.35), ("acid-volume", 50)).Notes, n => n.Contains("+1.9 % from 0.5", StringComparison.Ordinal));
        Assert.Empty(Trial.Values(new AcidStrength(), ("soda-ash", 1.3248), ("acid-volume", 50)).Notes);
    }

    // 30.0 g/L Na2O as sulphide against 2.182 g/L Na2O as sulphate: 93.22 %, computed from IUPAC atomic weights.
    [Fact]
    public void Sulphide_against_sulphate_gives_the_reduction() =>
        Assert.Equal(93.22, Trial.Value(new Reduction(), "reduction", ("na2s", 37.774), ("na2so4", 5.0)), 2);

    [Fact]
    public void Strict_reduction_counts_two_sulphurs_in_each_thiosulphate()
    {
        // one mole of each: 1 / (1 + 1 + 1 + 2), molar masses from IUPAC atomic weights
        var values = Trial.Values(new Reduction(), ("na2s", 78.03954), ("na2so4", 142.03554), ("na2so3", 126.03654), ("na2s2o3", 158.09654));

        Assert.Equal(50, values.Numbers["reduction"], 6);
        Assert.Equal(20, values.Numbers["strict-reduction"], 6);
    }

    [Fact]
    public void Strict_reduction_is_left_out_with_a_word_when_half_is_given()
    {
        var values = Trial.Values(new Reduction(), ("na2s", 37.774), ("na2so4", 5.0), ("na2so3", 1));

        Assert.False(values.Numbers.ContainsKey("strict-reduction"));
        Assert.Contains(values.Notes, n => n.Contains("na2s2o3", StringComparison.Ordinal));
    }

    [Fact]
    public void A_liquor_without_sulphur_has_no_reduction() =>
        Assert.Equal("na2s", Trial.Refusal(new Reduction(), ("na2s", 0), ("na2so4", 0)).Role);

    [Fact]
    public void A_poor_reduction_is_explained_two_ways() =>
        Assert.Contains(Trial.Values(new Reduction(), ("na2s", 30), ("na2so4", 10)).Notes, n => n.Contains("oxidised", StringComparison.Ordinal));

    // ASTM C25 rapid sugar test: with 2.804 g in the portion, 1 mL of 1.000 mol/L acid is 1 % CaO.
    [Theory]
    [InlineData(31.40, 1.0, 1.0, 88.04)]
    [InlineData(88, 1.0, 2.80385, 88.00)]
    public void The_sugar_test_gives_available_lime(double volume, double acid, double sample, double expected) =>
        Assert.Equal(expected, Trial.Value(new AvailableLime(), "available-cao", ("acid-volume", volume), ("acid", acid), ("sample", sample)), 2);

    [Fact]
    public void More_than_all_of_the_lime_is_refused() =>
        Assert.Equal("acid-volume", Trial.Refusal(new AvailableLime(), ("acid-volume", 40), ("acid", 1), ("sample", 1)).Role);

    [Theory]
    [InlineData(27, "low for reburned lime")]
    [InlineData(35, "high for reburned lime")]
    public void An_unusual_lime_is_explained(double volume, string words) =>
        Assert.Contains(Trial.Values(new AvailableLime(), ("acid-volume", volume), ("acid", 1), ("sample", 1)).Notes, n => n.Contains(words, StringComparison.Ordinal));

    // Classes from memory of AWWA B202 with the procedure of ASTM C110.
    [Theory]
    [InlineData(62, 68, 8, "High")]
    [InlineData(55, 67, 15, "Medium")]
    [InlineData(40, 55, 30, "Low")]
    public void The_slaking_rate_has_three_classes(double after, double final, double complete, string expected)
    {
        var values = Trial.Values(new SlakingReactivity(), ("start", 20), ("after-3min", after), ("final", final), ("complete", complete));

        Assert.Equal(after - 20, values.Numbers["rise-3min"], 9);
        Assert.Equal(final - 20, values.Numbers["rise-total"], 9);
        Assert.StartsWith(expected, Assert.Single(values.Notes), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(30, 15, 60, "after-3min")]
    [InlineData(70, 60, 65, "after-30s")]
    [InlineData(30, 60, 55, "final")]
    public void Temperatures_out_of_order_are_refused(double early, double after, double final, string role) =>
        Assert.Equal(role, Trial.Refusal(new SlakingReactivity(), ("start", 20), ("after-30s", early), ("after-3min", after), ("final", final), ("complete", 5)).Role);
}
