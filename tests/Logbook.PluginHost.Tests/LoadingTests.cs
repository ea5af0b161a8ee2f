namespace Logbook.PluginHost.Tests;

public sealed class LoadingTests
{
    private static readonly string[] Shipped = ["Causticizing", "Dregs", "GreenLiquor", "Laboratory", "LimeMud", "Slaking", "WeakWash", "WhiteLiquor"];

    [Fact]
    public void The_shipped_plug_ins_load_as_the_build_lays_them_out_whatever_lies_beside_them()
    {
        var reports = PluginCatalog.LoadShipped(PluginFolder.Built);

        Assert.All(Shipped, name => Assert.Equal((name, ""), (name, reports.Single(r => r.Name == name).Text)));
        Assert.Equal(reports.Select(r => r.Name).Order(StringComparer.Ordinal), reports.Select(r => r.Name), StringComparer.Ordinal);
    }

    [Fact]
    public void A_plug_ins_types_are_the_programs_own()
    {
        using var folder = new PluginFolder();

        var calculation = Assert.Single(folder.With("Throws").LoadOne().Calculations);

        Assert.IsType<Contracts.CalculationInfo>(calculation.Info);
    }

    [Fact]
    public void Calculations_come_in_order_of_id()
    {
        using var folder = new PluginFolder();

        var ids = folder.With("Slaking").LoadOne().Calculations.Select(c => c.Info.Id).ToList();

        Assert.Equal(ids.Order(StringComparer.Ordinal), ids, StringComparer.Ordinal);
    }

    [Fact]
    public void The_second_plug_in_that_offers_an_id_is_refused()
    {
        using var folder = new PluginFolder();

        var reports = folder.With("Slaking", "TwiceOffered").Load();

        Assert.Equal([("Slaking", "loaded", ""), ("TwiceOffered", "refused", "id-clash")], reports.Select(r => (r.Name, r.State, r.Code)));
        Assert.Contains("boiling-margin, which Slaking already does", reports[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_copy_of_the_contracts_is_refused()
    {
        using var folder = new PluginFolder();

        var report = folder.With("OwnContracts").LoadOne();

        Assert.Equal(("refused", "own-contracts"), (report.State, report.Code));
    }

    [Fact]
    public void A_class_that_cannot_be_made_is_said()
    {
        using var folder = new PluginFolder();

        var report = folder.With("NoConstructor").LoadOne();

        Assert.Equal(("failed", "load"), (report.State, report.Code));
        Assert.Contains("NoConstructor has no public constructor without parameters", report.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_constructor_that_never_comes_back_leaves_its_plug_in_out_and_the_others_are_loaded()
    {
        using var folder = new PluginFolder();

        var reports = folder.With("NeverMade", "Slaking").Load();

        Assert.Equal([("NeverMade", "failed", "load"), ("Slaking", "loaded", "")], reports.Select(r => (r.Name, r.State, r.Code)));
        Assert.Equal("making its class NeverMade takes longer than 2 s", reports[0].Text);
    }

    // 0xCBF43926: the check value of CRC-32 over "123456789" (ISO 3309).
    [Fact]
    public void A_plug_in_may_bring_a_library_of_its_own()
    {
        using var folder = new PluginFolder();

        var calculation = Assert.Single(folder.With("Dependent").LoadOne().Calculations);
        var outcome = calculation.Run(new Contracts.Inputs(new Dictionary<string, double>(StringComparer.Ordinal)));

        Assert.Equal(0xCBF43926, Assert.IsType<Contracts.Values>(outcome).Numbers["y"]);
    }
}
