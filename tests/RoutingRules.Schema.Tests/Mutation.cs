using System.Text.Json.Nodes;

namespace RoutingRules.Schema.Tests;

/// <summary>One way of changing a document: tries a place and says whether it did anything.</summary>
/// <param name="Name">For counting.</param>
/// <param name="Apply">Changes the tree at the value, if the value suits.</param>
internal sealed record Mutation(string Name, Func<JsonNode, Random, bool> Apply);
