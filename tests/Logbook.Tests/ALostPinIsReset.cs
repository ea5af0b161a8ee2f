namespace Logbook.Tests;

/// <summary>The file of PINs is taken away: the records know who had one, and nobody slips a new one in unseen.</summary>
public sealed class ALostPinIsReset : IDisposable
{
    private const string Pin = "270451";

    private readonly Cli _cli = new();

    public ALostPinIsReset()
    {
        foreach (var code in (string[])["op1", "sup1", "eng1"])
        {
            Assert.Equal(0, Set(code, by: code).Code);
        }
    }

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void A_missing_file_is_told_by_verify_and_by_the_list_of_people()
    {
        Assert.Equal("", _cli.Run("verify").Error);
        Keep();

        var verified = _cli.Run("verify");
        Assert.Equal(0, verified.Code);
        Assert.StartsWith("WARNING: PINs were set and are no longer kept in journal/pins: op1 (#2), sup1 (#3), eng1 (#4);", Assert.Single(verified.Lines), StringComparison.Ordinal);
        Assert.Equal(["eng1", "op1", "sup1"], Lost());
        var signed = _cli.RunWith(Pin, "carry", "close", Hazard(), "--why", "done", "--by", "op1", "--pin-file", "-");
        Assert.Equal((3, "op1's PIN was set (#2) and is no longer kept in journal/pins: it has to be reset: logbook people pin op1 --by CODE"), (signed.Code, Assert.Single(signed.Lines)));
    }

    [Fact]
    public void Somebody_whose_pin_alone_is_gone_is_given_a_new_one_by_a_supervisor()
    {
        Keep("sup1", "eng1");

        var own = Set("op1", by: "op1");
        Assert.Equal((3, "op1's PIN was set (#2) and is no longer kept in journal/pins: sup1 or eng1 resets it: logbook people pin op1 --by sup1"), (own.Code, Assert.Single(own.Lines)));
        Assert.Equal(3, Set("sup1", by: "op1").Code);
        Assert.Equal(0, Set("op1", by: "sup1").Code);

        Assert.Empty(Lost());
        Assert.Contains("PIN of Operator one RESET; stands beside the next signature", _cli.Run("log").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void With_every_pin_gone_a_supervisor_or_an_engineer_begins_and_it_is_a_reset()
    {
        Keep();

        Assert.Contains("nor is any of a supervisor or an engineer", Assert.Single(Set("op1", by: "op1").Lines), StringComparison.Ordinal);
        Assert.Equal(0, Set("eng1", by: "eng1").Code);
        Assert.Contains("PIN of Engineer RESET, the old one was no longer kept in journal/pins; stands beside the next signature", _cli.Run("log").Out, StringComparison.Ordinal);
        Assert.Equal(3, Set("sup1", by: "sup1").Code);
        Assert.Equal(0, Set("sup1", by: "eng1").Code);
        Assert.Equal(0, Set("op1", by: "sup1").Code);

        // What the engineer signs next says so, once.
        Assert.Equal(0, _cli.RunWith(Pin, "carry", "close", Hazard(), "--why", "seen", "--by", "eng1", "--pin-file", "-").Code);
        Assert.Contains("PIN reset before (#5)", _cli.Run("log").Out, StringComparison.Ordinal);
        Assert.Equal("", _cli.Run("verify").Error);
    }

    private Answer Set(string code, string by) =>
        code == by ? _cli.RunWith(Pin, "people", "pin", code, "--by", by, "--new-pin-file", "-")
        : _cli.RunWith(Pin, "people", "pin", code, "--by", by, "--new-pin-file", "-", "--pin-file", _cli.Write("pin", Pin));

    private string Hazard() => $"{_cli.Run("carry", "add", "--kind", "isolation", "--on", "mud-pump", "--text", "seal change", "--by", "op1", "--json").Json.GetProperty("seq").GetInt64()}";

    private string[] Lost() => [.. _cli.Run("people", "list", "--json").Json.GetProperty("people").EnumerateArray().Where(p => p.GetProperty("pin_lost").GetBoolean()).Select(p => p.GetProperty("code").GetString()!).Order(StringComparer.Ordinal)];

    /// <summary>Leaves the PINs of these people alone in the file; without any there is no file.</summary>
    private void Keep(params string[] codes)
    {
        var file = Path.Combine(_cli.Folder, "journal", "pins");
        var kept = File.ReadAllLines(file).Where(line => codes.Contains(line.Split(' ')[0], StringComparer.Ordinal)).ToList();
        File.Delete(file);
        if (kept.Count > 0)
        {
            File.WriteAllLines(file, kept);
        }
    }
}
