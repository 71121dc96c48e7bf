using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Cli.Output;

/// <summary>What came of reading a list or a map into a show.</summary>
/// <param name="Show">The show; null when there are problems.</param>
/// <param name="Edits">What makes it.</param>
/// <param name="Problems">What is wrong.</param>
/// <param name="Notes">What to mind.</param>
/// <param name="Brief">How it went, without a full stop.</param>
/// <param name="Account">How it went, in full.</param>
internal sealed record Imported(Show? Show, ValueList<ShowEdit> Edits, ValueList<string> Problems, ValueList<string> Notes, string Brief, string Account);
