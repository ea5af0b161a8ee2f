using System.CommandLine;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Storage.LiteDb;
using Logbook.Testing;
using Logbook.Tests;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>What the open screen does beside the typing, and the one line that Now has of it.</summary>
[Collection(OnAServer.Name)]
public sealed class TheScreenForwardsBeside(ClusterIfThere there) : IDisposable
{
    private static readonly TimeSpan LongEnough = TimeSpan.FromSeconds(60);

    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [ServerFact]
    public void What_is_saved_arrives_without_anybody_asking()
    {
        using var mill = new Mill(there.Cluster);
        mill.Admit(Drafts.Line);
        Assert.Equal(0, _cli.Run("record", "SL-F1=300", "--by", "op1").Code);

        Beside(mill.Cluster.ConnectionString(mill.Database, $"fw_{mill.Database}"), desk =>
        {
            Assert.True(SpinWait.SpinUntil(() => mill.Journal().Head == desk.Store.Head, LongEnough));
            Assert.True(SpinWait.SpinUntil(() => Said(desk).Text.StartsWith("holds everything", StringComparison.Ordinal), LongEnough), Said(desk).Text);
            Assert.False(Said(desk).Watch);
        });
    }

    [Fact]
    public void A_server_that_is_not_there_is_said_and_holds_nobody_up()
    {
        Assert.Equal(0, _cli.Run("record", "SL-F1=300", "--by", "op1").Code);

        Beside("Host=127.0.0.1;Port=1;Database=mill;Username=x;Password=s3cret;SSL Mode=Disable", desk =>
        {
            Assert.True(SpinWait.SpinUntil(() => Said(desk).Text.Contains("the server is away", StringComparison.Ordinal), LongEnough), Said(desk).Text);
            Assert.StartsWith("has acknowledged nothing yet; 2 records wait here, none is lost. Last try: ", Said(desk).Text, StringComparison.Ordinal);
            Assert.True(Said(desk).Watch);
            Assert.DoesNotContain("s3cret", Said(desk).Text, StringComparison.Ordinal);
            Assert.Equal(0, _cli.Run("record", "SL-F1=301", "--by", "op1").Code);
        });
    }

    [Fact]
    public void Where_no_server_is_named_nothing_is_said_of_one()
    {
        Beside(null, desk => Assert.Null(desk.Server));
        Assert.DoesNotContain("server", _cli.Run("now").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_line_says_how_much_waits_and_asks_for_somebody_only_when_it_waits_too_long()
    {
        var now = Drafts.Morning;
        var last = new Acknowledged(new Head(10, "x"), now.AddMinutes(-30));

        Assert.StartsWith("holds everything, ", ServerWords.Of(Some.Site, last, new Head(10, "x"), now, null).Text, StringComparison.Ordinal);
        var soon = ServerWords.Of(Some.Site, last, new Head(11, "y"), now, "not forwarded: the server is away");
        Assert.Contains("; 1 record waits here, none is lost. Last try: not forwarded", soon.Text, StringComparison.Ordinal);
        Assert.False(soon.Watch);
        Assert.True(ServerWords.Of(Some.Site, last, new Head(11, "y"), now.AddHours(1), "not forwarded: the server is away").Watch);
        Assert.True(ServerWords.Of(Some.Site, last, new Head(10, "x"), now, "REFUSED: they part at record 3").Watch);
    }

    private static ServerView Said(Desk desk) => desk.Server!(desk.Store.Head);

    private void Beside(string? address, Action<Desk> work)
    {
        var shell = new Shell(TextReader.Null, TextWriter.Null, TextWriter.Null, _cli.Clock, "test:2", _cli.Folder, _cli.Folder) { ServerVariable = address };
        using var journal = new LiteDbJournal(_cli.Folder, "test:2", _cli.Clock);
        var desk = new Desk(journal, Plant.SiteReader.Load(_cli.Folder).Value!, [], new InlineGuard(), _cli.Clock, "test:2");
        desk.Follow();
        using var beside = ForwardingBeside.Start(shell, new RootCommand { Options.Site }.Parse([]), desk);
        work(desk);
    }
}
