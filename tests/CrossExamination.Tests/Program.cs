using System.Diagnostics;
using System.Globalization;
using CrossExamination.Tests.Examining;
using CrossExamination.Tests.Plants;
using Logbook.Checks.CrossExamination;

// dotnet run --project tests/CrossExamination.Tests -- [positions] [first seed] [lines]: the tables of both simulated lines.
var numbers = args.Select(a => int.Parse(a, CultureInfo.InvariantCulture)).ToList();
var (positions, seed, lines) = (numbers.ElementAtOrDefault(0) is > 0 and var p ? p : 6, numbers.ElementAtOrDefault(1), numbers.ElementAtOrDefault(2) is > 0 and var l ? l : 3);
(string Title, Func<int, Plant> Make, double Lag)[] plants =
[
    ("easy line", s => new EasyPlant(s), 0),
    ("hard line, rounds every two hours", s => new HardPlant(s), 2),
    ("hard line, rounds every hour, titrations in turn", s => new HardPlant(s, 1), 2),
];
foreach (var (title, make, lag) in numbers.Count > 3 ? [plants[numbers[3]]] : plants)
{
    var watch = Stopwatch.StartNew();
    var evaluation = Evaluation.Run(make, lag, Enumerable.Range(0, lines).Select(i => seed + (97 * i)), positions);
    Console.WriteLine(Tables.Of(title, evaluation));
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"took {watch.Elapsed.TotalSeconds:F1} s"));
}

// How much of the processor one fit and one examination take on this machine.
var relations = new SiteRelations(0);
var line = new Observed(new EasyPlant(seed), relations);
var rounds = Enumerable.Range(0, 1200).Select(_ => line.Next()).ToList();
var own = System.Diagnostics.Process.GetCurrentProcess();
var before = own.TotalProcessorTime;
double Spent()
{
    own.Refresh();
    var spent = (own.TotalProcessorTime - before).TotalMilliseconds;
    before = own.TotalProcessorTime;
    return spent;
}

var fitted = Thresholds.Learn(relations.Line, rounds);
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"learning from {rounds.Count} entries: {Spent() / 1000:F2} s of the processor"));
var examiner = new Examiner(fitted);
foreach (var round in rounds)
{
    examiner.Next(round);
}

Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"one examination: {Spent() / rounds.Count:F3} ms of the processor"));
