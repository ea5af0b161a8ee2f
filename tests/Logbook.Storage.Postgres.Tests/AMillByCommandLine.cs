using Logbook.Tests;

namespace Logbook.Storage.Postgres.Tests;

/// <summary>Lines and an office, each as a person uses them: commands, exit codes, what is said.</summary>
[Collection(OnAServer.Name)]
public sealed class AMillByCommandLine(ClusterIfThere there) : IDisposable
{
    private readonly List<Cli> _folders = [];

    public void Dispose() => _folders.ForEach(f => f.Dispose());

    [ServerFact]
    public void Three_lines_forward_and_an_office_reads_across_them()
    {
        var database = Ready();
        var lines = new[] { "line-1", "line-2", "line-3" }.Select(id => Line(database, id)).ToList();
        foreach (var (line, i) in lines.Select((l, i) => (l, i)))
        {
            Done(line.Run("record", $"SL-F1={300 + i}", "SL-T1=100.2", "--by", "op1"));
            Done(line.Run("remark", $"valve {i} squeaks", "--by", "op1"));
            Assert.Contains("3 sent now", Done(line.Run("forward")).Out, StringComparison.Ordinal);
            Assert.Equal("whole", line.Run("forward", "--status", "--json").Json.GetProperty("state").GetString());
        }

        var office = Office(database, "rd");
        var found = Done(office.Run("find", "squeaks", "--server", "--json")).Json.GetProperty("log").EnumerateArray().ToList();
        var some = Done(office.Run("find", "squeaks", "--server", "--line", "line-2", "--json")).Json.GetProperty("log").EnumerateArray().Single();
        var series = Done(office.Run("list", "SL-F1", "--server", "--json")).Json.GetProperty("list").EnumerateArray().Select(v => v.GetProperty("value").GetDouble());
        var verified = Done(office.Run("verify", "--server", "--json")).Json.GetProperty("verify").EnumerateArray().ToList();

        Assert.Equal(["line-1", "line-2", "line-3"], found.Select(r => r.GetProperty("line").GetString()!), StringComparer.Ordinal);
        Assert.Equal("line-2", some.GetProperty("line").GetString());
        Assert.Equal([300, 301, 302], series);
        Assert.Equal(lines.Select(l => l.Run("verify", "--json").Json.GetProperty("head").GetString()), verified.Select(v => v.GetProperty("head").GetString()), StringComparer.Ordinal);
        var noted = lines[1].Run("verify", "--json").Json.GetProperty("head").GetString()!;
        Assert.Equal(0, office.Run("verify", "--server", "--line", "line-2", "--head", noted[..16]).Code);
        Assert.Equal(5, office.Run("verify", "--server", "--line", "line-3", "--head", noted[..16]).Code);
        Assert.Equal(2, office.Run("verify", "--server", "--head", noted).Code);
        Assert.Equal(2, office.Run("handover", "show", "--server", "--out", "notes.text").Code);
        Done(office.Run("handover", "show", "--server", "--line", "line-3", "--out", "note.text"));
        foreach (var command in (string[][])[["now"], ["audit"], ["trend", "SL-F1"], ["log"], ["limits"], ["handover", "show", "--template", "week"]])
        {
            var text = Done(office.Run([.. command, "--server"])).Out;
            Assert.All(lines.Select((_, i) => $"== line-{i + 1}\n"), head => Assert.Contains(head, text, StringComparison.Ordinal));
            // What an office reads of a line is, word for word, what the line itself reads.
            if (command[0] is not "now")
                Assert.Contains(lines[1].Run(command).Out, text, StringComparison.Ordinal);
        }
    }

    [ServerFact]
    public void While_the_server_is_away_the_line_works_the_same_and_says_what_waits()
    {
        var database = Ready();
        var line = Line(database, "line-1");
        Done(line.Run("record", "SL-F1=300", "--by", "op1"));
        Done(line.Run("forward"));
        there.Cluster.Kill();
        try
        {
            Assert.Equal(0, line.Run("record", "SL-F1=301", "--by", "op1").Code);
            Assert.Equal(0, line.Run("record", "SL-F1=302", "--by", "op1").Code);
            var forward = line.Run("forward");
            var status = line.Run("forward", "--status", "--json");
            var now = Done(line.Run("now"));

            Assert.Equal((4, 4), (forward.Code, status.Code));
            Assert.Contains("the server is away", forward.Lines[0], StringComparison.Ordinal);
            Assert.Contains("2 wait in the journal, and nothing of them is lost", forward.Lines[1], StringComparison.Ordinal);
            Assert.Equal("away", status.Json.GetProperty("state").GetString());
            Assert.Equal(2, status.Json.GetProperty("behind").GetInt32());
            Assert.Contains("2 records wait here, none is lost", now.Out, StringComparison.Ordinal);
        }
        finally
        {
            there.Cluster.Start();
        }

        line.Server = Text(database, $"fw_{database}");
        Assert.Contains("2 sent now", Done(line.Run("forward")).Out, StringComparison.Ordinal);
        Assert.Contains("holds everything", line.Run("now").Out, StringComparison.Ordinal);
    }

    [ServerFact]
    public void A_line_that_is_forwarded_to_two_servers_says_of_each_how_far_it_is()
    {
        var (mill, head) = (Ready(), Ready());
        var line = Line(mill, "line-1");
        Done(line.Run("record", "SL-F1=300", "--by", "op1"));
        Done(line.Run("forward"));
        Done(line.Run("record", "SL-F1=301", "--by", "op1"));
        line.Server = Text(head, $"fw_{head}");
        Assert.Contains("has acknowledged nothing yet; 3 records wait here", line.Run("now").Out, StringComparison.Ordinal);

        var first = Done(line.Run("forward"));
        var second = line.Run("now").Out;
        line.Server = Text(mill, $"fw_{mill}");
        var back = line.Run("now").Out;
        var rest = Done(line.Run("forward"));

        Assert.Contains("holds everything", second, StringComparison.Ordinal);
        Assert.Contains("holds all up to record 2", back, StringComparison.Ordinal);
        Assert.Contains("3 sent now", first.Out, StringComparison.Ordinal);
        Assert.Contains("1 sent now", rest.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("set back", first.Out + rest.Out, StringComparison.Ordinal);
    }

    [ServerFact]
    public void A_search_across_lines_is_of_the_last_month_unless_said_and_says_so()
    {
        var database = Ready();
        foreach (var line in (string[])["line-1", "line-2"])
        {
            var cli = Line(database, line);
            Done(cli.Run("remark", "valve squeaks", "--by", "op1"));
            cli.Clock.Advance(TimeSpan.FromDays(20));
            Done(cli.Run("remark", "valve squeaks again", "--by", "op1"));
            Done(cli.Run("forward"));
        }

        var office = Office(database, "rd");
        office.Clock.Advance(TimeSpan.FromDays(40));
        int Found(Answer answer) => Done(answer).Json.GetProperty("log").GetArrayLength();
        var usual = office.Run("find", "squeaks", "--server", "--json");
        var before = office.Run("find", "squeaks", "--server", "--to", "2026-12-01", "--json");
        var all = office.Run("find", "squeaks", "--server", "--from", "2026-11-01", "--json");

        Assert.Equal((2, 2, 4), (Found(usual), Found(before), Found(all)));
        Assert.Equal("searched: the last 31 days; --from TIME looks further back", usual.Lines[^1]);
        Assert.Equal("searched: the last 31 days before the time that is given; --from TIME looks further back", before.Lines[^1]);
        Assert.DoesNotContain("searched", all.Error, StringComparison.Ordinal);
    }

    [ServerFact]
    public void A_line_that_lost_its_journal_comes_back_from_the_server()
    {
        var database = Ready();
        var line = Line(database, "line-1");
        Done(line.Run("record", "SL-F1=300", "--by", "op1"));
        Done(line.Run("forward"));
        var head = line.Run("verify", "--json").Json.GetProperty("head").GetString();
        Directory.Delete(Path.Combine(line.Folder, "journal"), recursive: true);

        Done(Office(database, "rd").Run("export", "--server", "--line", "line-1", "--format", "jsonl", "--out", Path.Combine(line.Folder, "all.jsonl")));
        Done(line.Run("restore", "all.jsonl"));

        Assert.Equal(head, line.Run("verify", "--json").Json.GetProperty("head").GetString());
        Assert.Equal("whole", line.Run("forward", "--json").Json.GetProperty("state").GetString());
    }

    [ServerFact]
    public void A_second_site_with_the_same_name_is_refused_with_5()
    {
        var database = Ready();
        var (one, other) = (Line(database, "line-1"), Line(database, "line-1"));
        Done(one.Run("record", "SL-F1=300", "--by", "op1"));
        Done(one.Run("forward"));
        Done(other.Run("record", "SL-F1=290", "--by", "op1"));

        var answer = other.Run("forward");

        Assert.Equal(5, answer.Code);
        Assert.Contains("part at record", answer.Lines[0], StringComparison.Ordinal);
        Assert.Equal(2, Office(database, "rd").Run("server", "lines", "--json").Json.GetProperty("lines")[0].GetProperty("records").GetInt32());
    }

    [ServerFact]
    public void What_is_missing_is_one_line_and_no_secret_is_in_it()
    {
        var database = Ready();
        Done(Line(database, "line-1").Run("record", "SL-F1=300", "--by", "op1"));
        var stranger = Office(database, "other");
        var nowhere = Office(database, "rd");
        nowhere.Server = "Host=127.0.0.1;Port=1;Database=x;Username=x;Password=s3cret;SSL Mode=Disable";
        var plain = Office(database, "rd");
        plain.Server = "Host=db.mill.example;Database=x;Password=s3cret;SSL Mode=Disable";
        var none = Office(database, "rd");
        none.Server = null;

        foreach (var (office, code, word) in ((Cli, int, string)[])[(stranger, 4, "a right is missing"), (nowhere, 4, "the server is away"), (plain, 2, "without TLS"), (none, 2, "no server is named")])
        {
            var answer = office.Run("now", "--server");
            Assert.Equal(code, answer.Code);
            Assert.Contains(word, Assert.Single(answer.Lines), StringComparison.Ordinal);
            Assert.DoesNotContain("s3cret", answer.Error + answer.Out, StringComparison.Ordinal);
        }

        Assert.Equal(2, Office(database, "rd").Run("now", "--server", "--line", "line-9").Code);
        Assert.Equal(4, Office(database, "rd").Run("server", "admit", "line-7", "--forwarder", $"fw_{database}").Code);
        Assert.Equal(2, Office(database, "rd").Run("server", "admit", "line 7", "--forwarder", "x").Code);
    }

    private static Answer Done(Answer answer)
    {
        Assert.True(answer.Code == 0, answer.Error);
        return answer;
    }

    private string Ready()
    {
        var database = there.Cluster.NewDatabase();
        there.Cluster.Execute("postgres", $"create role fw_{database} login; create role rd_{database} login; create role other_{database} login");
        var office = Office(database, "lab");
        Done(office.Run("server", "init"));
        foreach (var line in (string[])["line-1", "line-2", "line-3"])
            Done(office.Run("server", "admit", line, "--forwarder", $"fw_{database}"));
        there.Cluster.Execute(database, $"grant logbook_reader to rd_{database}");
        return database;
    }

    private Cli Line(string database, string id)
    {
        var cli = Office(database, "fw");
        var site = Path.Combine(cli.Folder, "site.toml");
        File.WriteAllText(site, File.ReadAllText(site).Replace("id = \"line-1\"", $"id = \"{id}\"", StringComparison.Ordinal));
        return cli;
    }

    private Cli Office(string database, string role)
    {
        var cli = new Cli { Server = Text(database, role is "lab" ? role : $"{role}_{database}") };
        _folders.Add(cli);
        return cli;
    }

    private string Text(string database, string role) => there.Cluster.ConnectionString(database, role);
}
