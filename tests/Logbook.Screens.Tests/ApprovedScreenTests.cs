using Logbook.Notes.Tests;
using Logbook.Testing;

namespace Logbook.Screens.Tests;

public sealed class ApprovedScreenTests
{
    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Now(int width, int height)
    {
        using var terminal = new Terminal(before: BadNight);

        terminal.Size(width, height);

        Approve("now", terminal, width, height);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Now_on_a_quiet_morning(int width, int height)
    {
        using var terminal = new Terminal();

        terminal.Size(width, height);

        Approve("now-quiet", terminal, width, height);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Round(int width, int height)
    {
        using var terminal = new Terminal(before: BadNight);

        terminal.Size(width, height).Open("Line round").Press("99.8⏎348⏎n4⏎87");

        Approve("round", terminal, width, height);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Titration(int width, int height)
    {
        using var terminal = new Terminal();

        terminal.Size(width, height).Open("White liquor titration").Press("29.37⏎34.33⏎39.68⏎");

        Approve("titration", terminal, width, height);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Log(int width, int height)
    {
        using var terminal = new Terminal(before: BadNight);

        terminal.Size(width, height).Press("l↓");

        Approve("log", terminal, width, height);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Giving_the_line(int width, int height)
    {
        using var terminal = new Terminal(before: t => { BadNight(t); t.HeldBy("op1"); });

        terminal.Size(width, height).Press("h112");

        Approve("handover-give", terminal, width, height);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Taking_the_line(int width, int height)
    {
        using var terminal = new Terminal(by: "op3", before: t => { BadNight(t); t.HeldBy("op1"); });

        terminal.Size(width, height).Press("h");

        Approve("handover-read", terminal, width, height);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Graph(int width, int height)
    {
        using var terminal = new Terminal(before: GraphTests.Hours);

        terminal.Size(width, height).Press("/SL-F1⏎pSL-T1⏎←←←");

        Approve("graph", terminal, width, height);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Audit(int width, int height)
    {
        using var terminal = new Terminal(before: t => { BadNight(t); AuditTests.Corrected(t); t.HeldBy("op1"); });

        terminal.Size(width, height).Press("a↓");

        Approve("audit", terminal, width, height);
    }

    [Fact]
    public void Help()
    {
        using var terminal = new Terminal();

        terminal.Size(120, 40).Open("Line round").Press("?");

        Approve("help", terminal, 120, 40);
    }

    private static void BadNight(Terminal terminal)
    {
        terminal.Carry("safety-equipment", "slaker", "no flow when tested", null, ("instead", "the one at the classifier stair"));
        terminal.Carry("bypass", "lime-screw", "low-flow lime trip off", Some.Morning.AddHours(5), ("allowed-by", "eng1"), ("instead", "liquor flow by hand each 30 min"));
        terminal.Carry("temporary-change", "slaker", "hose for seal water", Some.Morning.AddMinutes(-30));
        terminal.At(-20);
        terminal.Record(null, "SL-T1=103.4", "LM-F1=22.4");
        Checks.Writing.Remark(terminal.Desk, "lime screw sounds rough", "lime-screw", null, "op1");
    }

    private static void Approve(string name, Terminal terminal, int width, int height) =>
        Approved.Matches(FormattableString.Invariant($"{name}-{width}x{height}.text"), terminal.Screen + "\n");
}
