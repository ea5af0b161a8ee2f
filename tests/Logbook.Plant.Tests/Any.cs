using CsCheck;

namespace Logbook.Plant.Tests;

internal static class Any
{
    /// <summary>One of these.</summary>
    public static Gen<T> Of<T>(params T[] these) => Gen.Int[0, these.Length - 1].Select(i => these[i]);
}
