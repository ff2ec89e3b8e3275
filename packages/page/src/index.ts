// The customer's page. Nothing yet: README.md says what will be here.

export {}
