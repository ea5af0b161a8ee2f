namespace Logbook.Plant.Tests;

public sealed class SiteChangesTests
{
    private static readonly SiteFiles Files = StarterSite.Files;

    private static IReadOnlyList<string> Changed(string file, string was, string now)
    {
        var text = Files.Texts[file];
        Assert.Contains(was, text, StringComparison.Ordinal);
        var other = new SiteFiles(Files.Texts.ToDictionary(f => f.Key, f => f.Key == file ? text.Replace(was, now, StringComparison.Ordinal) : f.Value, StringComparer.Ordinal));
        return SiteChanges.Between(SiteReader.Read(Files).Value!, SiteReader.Read(other).Value!);
    }

    [Fact]
    public void The_same_files_change_nothing() => Assert.Empty(Changed("site.toml", "# day 1 of the pattern for the first crew", "# the first crew's first day"));

    [Fact]
    public void A_limit_is_said_with_what_it_was() =>
        Assert.Equal(["LM-F1 watch high 22 -> none t/h"], Changed("points.csv", ",,22,25,6,,lime-screw", ",,,25,6,,lime-screw"));

    [Fact]
    public void A_round_a_person_and_a_lag_are_named()
    {
        Assert.Equal(["person op1 changed"], Changed("site.toml", "name = \"Operator one\"\nrole = \"operator\"", "name = \"Operator one\"\nrole = \"engineer\""));
        Assert.Equal(["calculation causticizers changed"], Changed("site.toml", "lag.liming-ratio = \"2h\"", "lag.liming-ratio = \"3h\""));
    }
}
