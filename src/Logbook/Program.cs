namespace Logbook;

internal static class Program
{
    private static int Main(string[] args)
    {
        var shell = Shell.OfProcess();
        try
        {
            return CommandLine.Run(args, shell);
        }
#pragma warning disable CA1031 // the last border: a fault of ours is one line and its own exit code, never a page of code
        catch (Exception fault)
#pragma warning restore CA1031
        {
            new VisibleWriter(shell.Error).WriteLine($"internal fault, please report it: {fault.GetType().Name}: {fault.Message.ReplaceLineEndings(" ")}");
            return ExitCode.Fault;
        }
    }
}
