namespace Evenstep.Service.Documents;

internal static class DocumentSetup
{
    public static void AddDocument(this IServiceCollection services)
    {
        services.AddEndpointsApiExplorer();
        services.AddSwaggerGen();
    }

    public static void UseDocument(this WebApplication app)
    {
        app.UseSwagger();
        app.UseSwaggerUI();
    }
}
