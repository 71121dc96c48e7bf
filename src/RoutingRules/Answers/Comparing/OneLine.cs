using System.Text.Encodings.Web;
using System.Text.Json;

namespace RoutingRules.Answers.Comparing;

/// <summary>How values of members are shown.</summary>
internal static class OneLine
{
    public static JsonSerializerOptions Options { get; } = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
}
