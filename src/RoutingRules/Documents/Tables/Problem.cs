using RoutingRules.Rules;

namespace RoutingRules.Documents.Tables;

/// <summary>A problem with its position in the text in bytes.</summary>
internal sealed record Problem(RuleDescriptor Rule, long Offset, string Pointer, string Message, string Remedy);
