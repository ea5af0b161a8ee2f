namespace Logbook;

internal static class Program
{
    private static int Main(string[] args) => CommandLine.Run(args, Shell.OfProcess());
}
