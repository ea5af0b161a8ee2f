using Logbook.Contracts;
using Logbook.Testing;

namespace Logbook.Plugins.Tests;

public sealed class EveryCalculationTests
{
    private static readonly IReadOnlyList<ICalculation> All =
    [
        .. new[]
            {
                typeof(Laboratory.Causticity), typeof(GreenLiquor.FlashCooling), typeof(Dregs.CakeSoda), typeof(Slaking.LimeFeed),
                typeof(Causticizing.ResidenceTime), typeof(WhiteLiquor.TankReserve), typeof(LimeMud.MudSolids), typeof(WeakWash.WeakWashDensity),
            }
            .SelectMany(t => t.Assembly.GetExportedTypes())
            .Where(t => t.IsAssignableTo(typeof(ICalculation)))
            .Select(t => (ICalculation)Activator.CreateInstance(t)!),
    ];

    public static TheoryData<string> Ids => [.. All.Select(c => c.Info.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Its_description_is_whole(string id) =>
        Assert.Empty(new PluginBench(All.Single(c => c.Info.Id == id)).Faults());

    [Fact]
    public void The_line_is_covered() =>
        Assert.Equal(
            [
                "acid-strength", "alkali-titration", "available-lime", "boiling-margin", "cake-soda", "causticity", "causticizing-train",
                "dissolving-tank-trim", "dregs-balance", "equilibrium-causticity", "filter-permeability", "flash-cooling", "free-lime",
                "green-liquor-density", "grits-rate", "lime-dose", "lime-feed", "lime-from-causticity", "mud-from-lime", "mud-solids",
                "mud-to-kiln", "mud-washing", "reduction", "residence-time", "slaker-temperature-rise", "slaking-reactivity",
                "soda-across-slaker", "tank-reserve", "weak-wash-density", "white-liquor-yield",
            ],
            All.Select(c => c.Info.Id).Order(StringComparer.Ordinal), StringComparer.Ordinal);

    [Theory]
    [InlineData("cao-dose", 4)]
    [InlineData("dry-mud", 2)]
    [InlineData("dregs", 3)]
    public void A_quantity_has_its_witnesses_in_one_unit(string quantity, int count)
    {
        var witnesses = All.SelectMany(c => c.Info.Outputs).Where(o => o.Estimates == quantity).ToList();

        Assert.Equal(count, witnesses.Count);
        Assert.Single(witnesses.Select(o => o.Unit).Distinct(StringComparer.Ordinal));
    }
}
