#if !RANDOM_SEEDS
[assembly: FsCheck.Xunit.Properties(Replay = RoutingRules.Tests.FixedSeed.Value)]

#endif

namespace RoutingRules.Tests;

/// <summary>The seed of every property of a test project, so that a red run means a change; <c>-p:RandomSeeds=true</c> looks at new cases.</summary>
internal static class FixedSeed
{
#if RANDOM_SEEDS
    public const string? Value = null;
#else
    public const string Value = "(20270612,7)";
#endif
}
