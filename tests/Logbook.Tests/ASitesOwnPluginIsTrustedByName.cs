namespace Logbook.Tests;

/// <summary>The worked example of DEVELOPERS.md, built like any plug-in, put to work in a site of its own.</summary>
public sealed class ASitesOwnPluginIsTrustedByName : IDisposable
{
    private const string Pin = "270451";

    /// <summary>The files put in force, and the PIN.</summary>
    private const int Before = 2;

    private readonly Cli _cli = new();

    public ASitesOwnPluginIsTrustedByName()
    {
        Copy("WashRatio");
        var toml = Path.Combine(_cli.Folder, "site.toml");
        File.WriteAllText(toml, File.ReadAllText(toml) + """

            [[calculation]]
            use = "wash-ratio"
            name = "dregs wash"
            inputs.wash = "DR-W"
            inputs.dregs = { value = "280 kg/h", u = "10%", source = "usual dregs" }
            outputs.ratio = "DR-WR"
            """);
        File.AppendAllText(Path.Combine(_cli.Folder, "points.csv"), "DR-WR,Wash water per dry dregs,dregs,1,derived,1,,,,,,1,4,,,,dregs-centrifuge,,,,\n");
        Assert.Equal(0, _cli.RunWith(Pin, "people", "pin", "eng1", "--by", "eng1", "--new-pin-file", "-").Code);
    }

    /// <summary>Where the build put a fixture: the same configuration as these tests.</summary>
    private static string Built(string plugin) => AppContext.BaseDirectory.Replace(Path.Combine("tests", "Logbook.Tests"), Path.Combine("tests", "Fixtures", plugin), StringComparison.Ordinal);

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void Until_it_is_trusted_it_is_not_loaded_and_says_how()
    {
        var check = _cli.Run("check");

        Assert.Equal(2, check.Code);
        Assert.Contains(check.Lines, l => l.Contains("plug-in WashRatio is not used", StringComparison.Ordinal) && l.Contains("code with the program's rights", StringComparison.Ordinal)
            && l.Contains("logbook plugins trust", StringComparison.Ordinal));
        Assert.Contains(check.Lines, l => l.Contains("there is no calculation 'wash-ratio'", StringComparison.Ordinal));
    }

    [Fact]
    public void Trusted_by_an_engineer_it_computes_in_the_round()
    {
        Assert.Equal(0, Trust("eng1").Code);

        Assert.Equal((0, ""), (_cli.Run("check").Code, _cli.Run("check").Error));
        var result = _cli.Run("record", "DR-W=1.20", "--by", "op1", "--json").Json.GetProperty("results").EnumerateArray().Single(r => r.GetProperty("name").GetString() == "dregs wash");
        Assert.Equal(1200.0 / 280, result.GetProperty("value").GetDouble(), 9);
        Assert.Equal("DR-WR", result.GetProperty("point").GetString());
        Assert.True(result.GetProperty("u").GetDouble() > 0.3);
    }

    [Fact]
    public void Whoever_types_an_engineers_code_without_the_pin_lets_nothing_in()
    {
        Assert.Equal(3, Trust("eng1", "000999").Code);

        Assert.Equal(2, _cli.Run("check").Code);
        Assert.DoesNotContain("trusted", _cli.Run("log").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_operator_may_not_trust_code()
    {
        var answer = Trust("op1");

        Assert.Equal((2, Before), (answer.Code, _cli.Records));
        Assert.Contains("only an engineer trusts plug-ins", Assert.Single(answer.Lines), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_changed_after_it_was_trusted_is_refused_until_it_is_trusted_anew()
    {
        Trust("eng1");
        File.AppendAllText(Own("WashRatio", "WashRatio.deps.json"), " ");

        var report = _cli.Run("plugins", "list", "--json").Json.GetProperty("plugins").EnumerateArray().Single(p => p.GetProperty("name").GetString() == "WashRatio");

        Assert.Equal(("refused", "changed"), (report.GetProperty("state").GetString(), report.GetProperty("code").GetString()));
        Assert.Contains("trust the plug-in anew", report.GetProperty("text").GetString(), StringComparison.Ordinal);
        Trust("eng1");
        Assert.Equal(0, _cli.Run("check").Code);
    }

    [Fact]
    public void The_record_names_every_file_and_the_log_says_it_in_words()
    {
        Trust("eng1");

        Assert.Contains("Plug-in WashRatio trusted, 2 files: written here, read by two of us", _cli.Run("log").Out, StringComparison.Ordinal);
        Assert.Equal(0, _cli.Run("verify").Code);
    }

    [Theory]
    [InlineData("Nothing", "plugins/Nothing")]
    [InlineData("../WashRatio", "is no plug-in name: a letter, then letters, digits, '.', '_' or '-', 64 at most")]
    public void What_is_no_plug_in_cannot_be_trusted(string name, string words)
    {
        var answer = _cli.Run("plugins", "trust", name, "--why", "hope", "--by", "eng1");

        Assert.Equal((2, Before), (answer.Code, _cli.Records));
        Assert.EndsWith(words, Assert.Single(answer.Lines), StringComparison.Ordinal);
    }

    [Fact]
    public void Trusting_it_says_at_once_what_it_offers_or_why_it_does_not_load()
    {
        var good = Trust("eng1");
        Copy("NeverMade");
        var bad = Trust("eng1", plugin: "NeverMade");

        Assert.Equal((0, ""), (good.Code, good.Error));
        Assert.EndsWith("it loads, and offers wash-ratio\n", good.Out, StringComparison.Ordinal);
        Assert.Equal((0, Before + 2), (bad.Code, _cli.Records));
        Assert.Equal("plug-in NeverMade is not used: making its class NeverMade takes longer than 2 s", Assert.Single(bad.Lines));
    }

    [Fact]
    public void Explaining_it_with_numbers_takes_the_sites_constant_for_a_role_that_is_not_given_and_says_so()
    {
        Trust("eng1");

        var help = _cli.Run("calc", "explain", "wash-ratio", "wash=1.2");
        var own = _cli.Run("calc", "explain", "wash-ratio", "wash=1.2", "dregs=300");

        Assert.Equal((0, ""), (help.Code, help.Error));
        Assert.Contains("  dregs = 280 kg/h, as 'dregs wash' has it here\n", help.Out, StringComparison.Ordinal);
        Assert.Contains("ratio: 4.3 plus or minus 0.8, dregs", help.Out, StringComparison.Ordinal); // as the round prints it: the constant brings its u along
        Assert.DoesNotContain("has it here", own.Out, StringComparison.Ordinal);
        Assert.Contains("ratio: 4\n", own.Out, StringComparison.Ordinal);
        Assert.Equal(2, _cli.Run("calc", "explain", "wash-ratio", "dregs=300").Code);
    }

    [Fact]
    public void Explaining_it_shows_where_the_site_uses_it_and_its_constant()
    {
        Trust("eng1");

        var help = _cli.Run("calc", "explain", "wash-ratio", "wash=1.2", "dregs=280").Out;

        Assert.Contains("Here as 'dregs wash'", help, StringComparison.Ordinal);
        Assert.Contains("dregs: 280 kg/h, standard uncertainty 28; source: usual dregs; no date", help, StringComparison.Ordinal);
        Assert.Contains("ratio = 1000 x 1.2 / 280 = 4.29", help, StringComparison.Ordinal);
    }

    private void Copy(string plugin)
    {
        Directory.CreateDirectory(Own(plugin));
        foreach (var file in new[] { $"{plugin}.dll", $"{plugin}.deps.json" })
        {
            File.Copy(Path.Combine(Built(plugin), file), Own(plugin, file));
        }
    }

    private Answer Trust(string by, string pin = Pin, string plugin = "WashRatio") => _cli.RunWith(pin, "plugins", "trust", plugin, "--why", "written here, read by two of us", "--by", by, "--pin-file", "-");

    private string Own(params string[] parts) => Path.Combine([_cli.Folder, "plugins", .. parts]);
}
