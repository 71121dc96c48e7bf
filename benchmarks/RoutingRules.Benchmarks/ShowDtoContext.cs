using System.Text.Json.Serialization;

namespace RoutingRules.Benchmarks;

/// <summary>Source-generated serializer of <see cref="ShowDto"/>: unknown and duplicate members are refused, as the reader does.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    AllowDuplicateProperties = false
)]
[JsonSerializable(typeof(ShowDto))]
public sealed partial class ShowDtoContext : JsonSerializerContext;
