using System.Text.RegularExpressions;

namespace RoutingRules.Tests.Promises;

/// <summary>The words of steps that move plugs.</summary>
internal static partial class StepWords
{
    [GeneratedRegex(@"^(Bring in|Exchange) '")]
    public static partial Regex Come();

    [GeneratedRegex(@"^At (\S+) pull '.+' and plug '(.+?)'.*\.$")]
    public static partial Regex Swap();

    [GeneratedRegex(@"^Move '(.+?)'.* from (\S+) to (\S+)\.$")]
    public static partial Regex Move();

    [GeneratedRegex(@"^Pull '.+' out of (\S+?)( and keep it at hand)?\.$")]
    public static partial Regex Pull();

    [GeneratedRegex(@"^Plug '(.+?)'.* into ([^\s(]+?)( \(.*\))?\.$")]
    public static partial Regex Plug();
}
