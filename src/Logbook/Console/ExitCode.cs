namespace Logbook;

/// <summary>What the program tells the shell that called it. Stable.</summary>
internal static class ExitCode
{
    public const int Done = 0;
    public const int BadInput = 2;
    public const int RefusedByRule = 3;
    public const int Store = 4;
    public const int VerificationFailed = 5;
    public const int NoTerminal = 69;
    public const int Fault = 70;

    /// <summary>As shells count a program that Ctrl+C ended.</summary>
    public const int Stopped = 130;
}
