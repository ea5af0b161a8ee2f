using Logbook.Contracts;

namespace Logbook.Testing;

/// <summary>
/// Runs calculations on the thread that asks, without a deadline: for tests, where an exception should be seen. What is no
/// number fails here as it does in the program.
/// </summary>
public sealed class InlineGuard : IGuard
{
    public T Run<T>(Func<GuardedCall, T> pass) => pass((calculation, inputs) => calculation.Run(inputs) switch
    {
        Values values when values.Numbers.Any(n => !double.IsFinite(n.Value)) => new Failed("it came out as no number"),
        var outcome => outcome,
    });
}
