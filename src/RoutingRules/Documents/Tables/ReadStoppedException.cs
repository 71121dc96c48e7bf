namespace RoutingRules.Documents.Tables;

/// <summary>Ends a reading from any depth; the reason has been noted in the session. Never leaves the readers.</summary>
internal sealed class ReadStoppedException : Exception;
