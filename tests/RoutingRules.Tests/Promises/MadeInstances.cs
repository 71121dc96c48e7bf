using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Tests.Assignment;

namespace RoutingRules.Tests.Promises;

/// <summary>Shows with options of <see cref="AssignCases.Any"/>, the same one for the same seed.</summary>
internal static class MadeInstances
{
    /// <summary>The instance of a seed.</summary>
    public static TinyInstance Make(int seed)
    {
        var value = AssignCases.Any().Generator.Sample(1, new Rnd((ulong)seed, 7), 60).Single();
        return new()
        {
            Seed = seed,
            Show = value.Show,
            Options = value.Options,
        };
    }
}
