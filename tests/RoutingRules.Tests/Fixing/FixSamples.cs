using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Model;
using RoutingRules.Tests.Checking.Rules;

namespace RoutingRules.Tests.Fixing;

/// <summary>A fixed handful of shows with many kinds of mistakes.</summary>
internal static class FixSamples
{
    public static IReadOnlyList<Show> Shows { get; } =
    [
        .. RoughShows.Shows().Generator.Sample(100, new Rnd(20270612), 100),
        .. MessyShows.Shows().Generator.Sample(100, new Rnd(20270612), 100).Select(messy => messy.Show),
    ];
}
